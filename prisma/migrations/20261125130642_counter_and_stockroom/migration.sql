-- CreateEnum
CREATE TYPE "Grade" AS ENUM ('first', 'second', 'irregular');

-- CreateEnum
CREATE TYPE "FoodUse" AS ENUM ('not_proven', 'decorative_only', 'proven');

-- CreateEnum
CREATE TYPE "MaySplit" AS ENUM ('may_be_split', 'never_split', 'split_at_single_price');

-- CreateEnum
CREATE TYPE "TradeWay" AS ENUM ('discount', 'referral_fee');

-- CreateEnum
CREATE TYPE "DiscountBearer" AS ENUM ('nobody', 'gallery', 'us', 'both');

-- CreateEnum
CREATE TYPE "HoldEnd" AS ENUM ('sold', 'released', 'lapsed');

-- CreateEnum
CREATE TYPE "WaitingFor" AS ENUM ('second_in_line', 'back_again');

-- CreateEnum
CREATE TYPE "ReturnKind" AS ENUM ('returned', 'exchanged', 'voided');

-- CreateEnum
CREATE TYPE "ReturnedTo" AS ENUM ('shelf', 'second', 'broken', 'nothing');

-- CreateEnum
CREATE TYPE "DiscountKind" AS ENUM ('line', 'slip', 'trade', 'set', 'gallery_share', 'wholesale');

-- CreateEnum
CREATE TYPE "Delivery" AS ENUM ('taken', 'sent', 'installed');

-- CreateEnum
CREATE TYPE "PlaceKind" AS ENUM ('gallery', 'storeroom', 'studio', 'fair', 'consignee', 'on_approval');

-- CreateEnum
CREATE TYPE "TaxKind" AS ENUM ('goods', 'shipping', 'installation', 'design_work', 'none');

-- CreateEnum
CREATE TYPE "TaxTreatmentKind" AS ENUM ('taxed', 'not_taxed', 'not_taxed_when_separate');

-- CreateEnum
CREATE TYPE "DeliveryShare" AS ENUM ('by_price', 'by_weight', 'all_taxed');

-- CreateEnum
CREATE TYPE "ThresholdWindow" AS ENUM ('this_calendar_year', 'this_or_last_calendar_year', 'twelve_months');

-- CreateEnum
CREATE TYPE "CreditKind" AS ENUM ('voucher', 'store_credit');

-- AlterEnum
-- This migration adds more than one value to an enum.
-- With PostgreSQL versions 11 and earlier, this is not possible
-- in a single migration. This can be worked around by creating
-- multiple migrations, each migration adding only one value to
-- the enum.


ALTER TYPE "Channel" ADD VALUE 'consigned';
ALTER TYPE "Channel" ADD VALUE 'wholesale';

-- AlterEnum
-- This migration adds more than one value to an enum.
-- With PostgreSQL versions 11 and earlier, this is not possible
-- in a single migration. This can be worked around by creating
-- multiple migrations, each migration adding only one value to
-- the enum.


ALTER TYPE "LineKind" ADD VALUE 'typed';
ALTER TYPE "LineKind" ADD VALUE 'shipping';
ALTER TYPE "LineKind" ADD VALUE 'installation';
ALTER TYPE "LineKind" ADD VALUE 'design_work';
ALTER TYPE "LineKind" ADD VALUE 'voucher';
ALTER TYPE "LineKind" ADD VALUE 'instalment';
ALTER TYPE "LineKind" ADD VALUE 'order_deposit';
ALTER TYPE "LineKind" ADD VALUE 'layaway_payment';

-- AlterEnum
-- This migration adds more than one value to an enum.
-- With PostgreSQL versions 11 and earlier, this is not possible
-- in a single migration. This can be worked around by creating
-- multiple migrations, each migration adding only one value to
-- the enum.


ALTER TYPE "MovementReason" ADD VALUE 'returned';
ALTER TYPE "MovementReason" ADD VALUE 'moved';
ALTER TYPE "MovementReason" ADD VALUE 'second';

-- AlterEnum
-- This migration adds more than one value to an enum.
-- With PostgreSQL versions 11 and earlier, this is not possible
-- in a single migration. This can be worked around by creating
-- multiple migrations, each migration adding only one value to
-- the enum.


ALTER TYPE "TenderKind" ADD VALUE 'voucher';
ALTER TYPE "TenderKind" ADD VALUE 'store_credit';
ALTER TYPE "TenderKind" ADD VALUE 'layaway';

-- AlterTable
ALTER TABLE "Colourway" ADD COLUMN     "endedOn" DATE;

-- AlterTable
ALTER TABLE "Gallery" ADD COLUMN     "approvalDays" INTEGER NOT NULL DEFAULT 7,
ADD COLUMN     "drawerFloatCents" BIGINT NOT NULL DEFAULT 20000,
ADD COLUMN     "holdHours" INTEGER NOT NULL DEFAULT 48,
ADD COLUMN     "layawayDays" INTEGER NOT NULL DEFAULT 90,
ADD COLUMN     "layawayDownPercent" DECIMAL(5,2) NOT NULL DEFAULT 25,
ADD COLUMN     "layawayTerms" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "restockingFeePercent" DECIMAL(5,2) NOT NULL DEFAULT 0,
ADD COLUMN     "returnDays" INTEGER NOT NULL DEFAULT 14,
ADD COLUMN     "staffDiscountPercent" DECIMAL(5,2) NOT NULL DEFAULT 10;

-- AlterTable
ALTER TABLE "Place" ADD COLUMN     "closedAt" TIMESTAMPTZ(3),
ADD COLUMN     "kind" "PlaceKind" NOT NULL DEFAULT 'gallery';

-- AlterTable
ALTER TABLE "Posting" ADD COLUMN     "collectorId" UUID,
ADD COLUMN     "creditId" UUID,
ADD COLUMN     "layawayId" UUID,
ADD COLUMN     "orderId" UUID;

-- AlterTable
ALTER TABLE "Sale" ADD COLUMN     "certificateId" UUID,
ADD COLUMN     "deliverTo" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "delivery" "Delivery" NOT NULL DEFAULT 'taken',
ADD COLUMN     "exemptWhy" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "fairId" UUID,
ADD COLUMN     "giftTo" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "giftWords" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "referredById" UUID;

-- AlterTable
ALTER TABLE "SaleLine" ADD COLUMN     "commissionId" UUID,
ADD COLUMN     "creditId" UUID,
ADD COLUMN     "discountCents" BIGINT NOT NULL DEFAULT 0,
ADD COLUMN     "layawayId" UUID,
ADD COLUMN     "orderId" UUID,
ADD COLUMN     "taxKind" "TaxKind" NOT NULL DEFAULT 'goods',
ADD COLUMN     "taxableCents" BIGINT NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Sku" ADD COLUMN     "firstSkuId" UUID,
ADD COLUMN     "flaw" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "foodUse" "FoodUse" NOT NULL DEFAULT 'not_proven',
ADD COLUMN     "grade" "Grade" NOT NULL DEFAULT 'first',
ADD COLUMN     "madeInYear" INTEGER,
ADD COLUMN     "medium" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "StockLevel" ADD COLUMN     "held" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "StockMovement" ADD COLUMN     "countId" UUID,
ADD COLUMN     "editionNumber" INTEGER,
ADD COLUMN     "returnLineId" UUID,
ADD COLUMN     "transferId" UUID;

-- AlterTable
ALTER TABLE "Tender" ADD COLUMN     "creditId" UUID,
ADD COLUMN     "layawayId" UUID,
ADD COLUMN     "orderId" UUID;

-- CreateTable
CREATE TABLE "Edition" (
    "skuId" UUID NOT NULL,
    "size" INTEGER NOT NULL,
    "artistProofs" INTEGER NOT NULL DEFAULT 0,
    "mouldId" UUID,
    "statedOn" DATE NOT NULL,

    CONSTRAINT "Edition_pkey" PRIMARY KEY ("skuId")
);

-- CreateTable
CREATE TABLE "EditionPiece" (
    "skuId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "placeId" UUID,

    CONSTRAINT "EditionPiece_pkey" PRIMARY KEY ("skuId","number")
);

-- CreateTable
CREATE TABLE "Mould" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "designId" UUID NOT NULL,
    "lifeCasts" INTEGER NOT NULL,
    "begunWith" INTEGER NOT NULL DEFAULT 0,
    "madeOn" DATE NOT NULL,
    "retiredOn" DATE,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "Mould_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MouldCast" (
    "id" BIGSERIAL NOT NULL,
    "mouldId" UUID NOT NULL,
    "casts" INTEGER NOT NULL,
    "on" DATE NOT NULL,
    "jobId" UUID,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "MouldCast_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PriceChange" (
    "id" UUID NOT NULL,
    "skuId" UUID NOT NULL,
    "fromOn" DATE NOT NULL,
    "priceCents" BIGINT NOT NULL,
    "beforeCents" BIGINT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "tagDoneAt" TIMESTAMPTZ(3),
    "tagDoneById" UUID,

    CONSTRAINT "PriceChange_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PieceSet" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "priceCents" BIGINT,
    "maySplit" "MaySplit" NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "PieceSet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PieceSetMember" (
    "setId" UUID NOT NULL,
    "skuId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,

    CONSTRAINT "PieceSetMember_pkey" PRIMARY KEY ("setId","skuId")
);

-- CreateTable
CREATE TABLE "TradeTerms" (
    "collectorId" UUID NOT NULL,
    "way" "TradeWay" NOT NULL,
    "percent" DECIMAL(5,2) NOT NULL,
    "sinceOn" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "TradeTerms_pkey" PRIMARY KEY ("collectorId")
);

-- CreateTable
CREATE TABLE "ResaleCertificate" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "permitNumber" TEXT NOT NULL,
    "legalName" TEXT NOT NULL,
    "buys" TEXT NOT NULL DEFAULT '',
    "fromOn" DATE NOT NULL,
    "untilOn" DATE,
    "fileId" UUID,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawnAt" TIMESTAMPTZ(3),

    CONSTRAINT "ResaleCertificate_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReferralFee" (
    "id" UUID NOT NULL,
    "saleId" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "percent" DECIMAL(5,2) NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "entryId" UUID NOT NULL,
    "paidOn" DATE,
    "paidEntryId" UUID,

    CONSTRAINT "ReferralFee_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Consignee" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "sharePercent" DECIMAL(5,2) NOT NULL,
    "payDays" INTEGER NOT NULL DEFAULT 30,
    "terms" TEXT NOT NULL DEFAULT '',
    "sinceOn" DATE NOT NULL,
    "endedOn" DATE,

    CONSTRAINT "Consignee_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ConsignmentNote" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "consigneeId" UUID NOT NULL,
    "transferId" UUID NOT NULL,
    "isBack" BOOLEAN NOT NULL DEFAULT false,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ConsignmentNote_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ConsignmentNoteLine" (
    "noteId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "skuId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "editionNumber" INTEGER,
    "retailCents" BIGINT NOT NULL,

    CONSTRAINT "ConsignmentNoteLine_pkey" PRIMARY KEY ("noteId","position")
);

-- CreateTable
CREATE TABLE "ConsignmentReport" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "consigneeId" UUID NOT NULL,
    "saleId" UUID NOT NULL,
    "fromOn" DATE NOT NULL,
    "untilOn" DATE NOT NULL,
    "dueOn" DATE NOT NULL,
    "dueCents" BIGINT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ConsignmentReport_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ConsignmentReportLine" (
    "reportId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "skuId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "editionNumber" INTEGER,
    "soldOn" DATE NOT NULL,
    "retailCents" BIGINT NOT NULL,
    "discountCents" BIGINT NOT NULL DEFAULT 0,
    "borneBy" "DiscountBearer" NOT NULL DEFAULT 'nobody',
    "dueCents" BIGINT NOT NULL,

    CONSTRAINT "ConsignmentReportLine_pkey" PRIMARY KEY ("reportId","position")
);

-- CreateTable
CREATE TABLE "DrawerCount" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "on" DATE NOT NULL,
    "expectedCents" BIGINT NOT NULL,
    "countedCents" BIGINT NOT NULL,
    "pieces" JSONB NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "floatCents" BIGINT NOT NULL,
    "bankedCents" BIGINT NOT NULL,
    "cardTotalCents" BIGINT,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entryId" UUID,

    CONSTRAINT "DrawerCount_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PettyCash" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "what" TEXT NOT NULL,
    "on" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entryId" UUID NOT NULL,

    CONSTRAINT "PettyCash_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Fair" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "name" TEXT NOT NULL,
    "town" TEXT NOT NULL DEFAULT '',
    "placeId" UUID NOT NULL,
    "taxPlaceId" UUID NOT NULL,
    "fromOn" DATE NOT NULL,
    "untilOn" DATE NOT NULL,
    "feeCents" BIGINT NOT NULL DEFAULT 0,
    "travelCents" BIGINT NOT NULL DEFAULT 0,
    "otherCents" BIGINT NOT NULL DEFAULT 0,
    "minutes" INTEGER NOT NULL DEFAULT 0,
    "note" TEXT NOT NULL DEFAULT '',
    "closedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Fair_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FairPrice" (
    "fairId" UUID NOT NULL,
    "skuId" UUID NOT NULL,
    "priceCents" BIGINT NOT NULL,

    CONSTRAINT "FairPrice_pkey" PRIMARY KEY ("fairId","skuId")
);

-- CreateTable
CREATE TABLE "Hold" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "skuId" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "editionNumber" INTEGER,
    "forWhom" TEXT NOT NULL,
    "phone" TEXT NOT NULL DEFAULT '',
    "collectorId" UUID,
    "untilAt" TIMESTAMPTZ(3),
    "note" TEXT NOT NULL DEFAULT '',
    "layawayId" UUID,
    "orderId" UUID,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "calledAt" TIMESTAMPTZ(3),
    "endedAt" TIMESTAMPTZ(3),
    "endedHow" "HoldEnd",
    "endedById" UUID,

    CONSTRAINT "Hold_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Waiting" (
    "id" UUID NOT NULL,
    "skuId" UUID NOT NULL,
    "what" "WaitingFor" NOT NULL,
    "forWhom" TEXT NOT NULL,
    "phone" TEXT NOT NULL DEFAULT '',
    "collectorId" UUID,
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "toldAt" TIMESTAMPTZ(3),
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Waiting_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OnApproval" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "collectorId" UUID NOT NULL,
    "transferId" UUID NOT NULL,
    "dueOn" DATE NOT NULL,
    "valueCents" BIGINT NOT NULL,
    "condition" TEXT NOT NULL DEFAULT '',
    "security" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "OnApproval_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OnApprovalLine" (
    "approvalId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "skuId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "editionNumber" INTEGER,

    CONSTRAINT "OnApprovalLine_pkey" PRIMARY KEY ("approvalId","position")
);

-- CreateTable
CREATE TABLE "OnApprovalBack" (
    "transferId" UUID NOT NULL,
    "approvalId" UUID NOT NULL,
    "bought" BOOLEAN NOT NULL DEFAULT false,
    "condition" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "OnApprovalBack_pkey" PRIMARY KEY ("transferId")
);

-- CreateTable
CREATE TABLE "OnApprovalPicture" (
    "id" UUID NOT NULL,
    "approvalId" UUID NOT NULL,
    "fileId" UUID NOT NULL,
    "isBack" BOOLEAN NOT NULL DEFAULT false,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "OnApprovalPicture_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Layaway" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "collectorId" UUID NOT NULL,
    "taxPlaceId" UUID NOT NULL,
    "agreedOn" DATE NOT NULL,
    "finalOn" DATE NOT NULL,
    "downCents" BIGINT NOT NULL,
    "netCents" BIGINT NOT NULL,
    "totalCents" BIGINT NOT NULL,
    "terms" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),
    "endedWhy" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "Layaway_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "LayawayLine" (
    "layawayId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "skuId" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "editionNumber" INTEGER,
    "unitPriceCents" BIGINT NOT NULL,
    "discountCents" BIGINT NOT NULL DEFAULT 0,
    "discountReason" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "LayawayLine_pkey" PRIMARY KEY ("layawayId","position")
);

-- CreateTable
CREATE TABLE "LayawayDue" (
    "layawayId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "dueOn" DATE NOT NULL,
    "amountCents" BIGINT NOT NULL,

    CONSTRAINT "LayawayDue_pkey" PRIMARY KEY ("layawayId","position")
);

-- CreateTable
CREATE TABLE "SpecialOrder" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "collectorId" UUID NOT NULL,
    "skuId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "unitPriceCents" BIGINT NOT NULL,
    "depositCents" BIGINT NOT NULL,
    "wish" TEXT NOT NULL DEFAULT '',
    "isSent" BOOLEAN NOT NULL DEFAULT false,
    "sendTo" TEXT NOT NULL DEFAULT '',
    "readyAboutOn" DATE NOT NULL,
    "askedOn" DATE NOT NULL,
    "saidBefore" TEXT NOT NULL DEFAULT '',
    "jobId" UUID,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "toldReadyAt" TIMESTAMPTZ(3),
    "endedAt" TIMESTAMPTZ(3),
    "endedWhy" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "SpecialOrder_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GoodsReturn" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "saleId" UUID NOT NULL,
    "kind" "ReturnKind" NOT NULL,
    "reason" TEXT NOT NULL,
    "netCents" BIGINT NOT NULL,
    "taxCents" BIGINT NOT NULL,
    "feeCents" BIGINT NOT NULL DEFAULT 0,
    "totalCents" BIGINT NOT NULL,
    "returnedOn" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entryId" UUID NOT NULL,

    CONSTRAINT "GoodsReturn_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GoodsReturnLine" (
    "id" UUID NOT NULL,
    "returnId" UUID NOT NULL,
    "saleLineId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "editionNumber" INTEGER,
    "netCents" BIGINT NOT NULL,
    "taxCents" BIGINT NOT NULL,
    "to" "ReturnedTo" NOT NULL,
    "placeId" UUID,

    CONSTRAINT "GoodsReturnLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GoodsReturnTax" (
    "returnId" UUID NOT NULL,
    "authority" TEXT NOT NULL,
    "taxCents" BIGINT NOT NULL,

    CONSTRAINT "GoodsReturnTax_pkey" PRIMARY KEY ("returnId","authority")
);

-- CreateTable
CREATE TABLE "Refund" (
    "id" UUID NOT NULL,
    "returnId" UUID NOT NULL,
    "tenderId" UUID NOT NULL,
    "kind" "TenderKind" NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "reference" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "Refund_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SaleDiscount" (
    "id" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "kind" "DiscountKind" NOT NULL,
    "reason" TEXT NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "givenById" UUID NOT NULL,

    CONSTRAINT "SaleDiscount_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ToCollect" (
    "saleLineId" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "untilOn" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "collectedAt" TIMESTAMPTZ(3),
    "collectedById" UUID,

    CONSTRAINT "ToCollect_pkey" PRIMARY KEY ("saleLineId")
);

-- CreateTable
CREATE TABLE "DeliveryProof" (
    "saleId" UUID NOT NULL,
    "carrier" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "sentOn" DATE NOT NULL,
    "arrivedOn" DATE,
    "fileId" UUID,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "DeliveryProof_pkey" PRIMARY KEY ("saleId")
);

-- CreateTable
CREATE TABLE "Slip" (
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "content" JSONB NOT NULL,
    "placeId" UUID NOT NULL,
    "collectorId" UUID,
    "asideAs" TEXT,
    "staffId" UUID NOT NULL,
    "openedAt" TIMESTAMPTZ(3) NOT NULL,
    "changedAt" TIMESTAMPTZ(3) NOT NULL,
    "saleId" UUID,
    "thrownAwayAt" TIMESTAMPTZ(3),

    CONSTRAINT "Slip_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockTransfer" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "fromId" UUID NOT NULL,
    "toId" UUID NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "movedOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "StockTransfer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockCount" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "placeId" UUID NOT NULL,
    "partOnly" BOOLEAN NOT NULL DEFAULT false,
    "startedById" UUID NOT NULL,
    "startedAt" TIMESTAMPTZ(3) NOT NULL,
    "bookedById" UUID,
    "bookedAt" TIMESTAMPTZ(3),
    "leftAt" TIMESTAMPTZ(3),

    CONSTRAINT "StockCount_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockCountLine" (
    "countId" UUID NOT NULL,
    "skuId" UUID NOT NULL,
    "counted" INTEGER NOT NULL,
    "expected" INTEGER,
    "numbers" INTEGER[] DEFAULT ARRAY[]::INTEGER[],
    "why" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "StockCountLine_pkey" PRIMARY KEY ("countId","skuId")
);

-- CreateTable
CREATE TABLE "DataLoad" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "fileId" UUID NOT NULL,
    "fileName" TEXT NOT NULL,
    "rowsTotal" INTEGER NOT NULL DEFAULT 0,
    "rowsDone" INTEGER NOT NULL DEFAULT 0,
    "staffId" UUID NOT NULL,
    "startedAt" TIMESTAMPTZ(3) NOT NULL,
    "seenAt" TIMESTAMPTZ(3) NOT NULL,
    "stopAskedAt" TIMESTAMPTZ(3),
    "endedAt" TIMESTAMPTZ(3),
    "outcome" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "DataLoad_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TaxTreatment" (
    "id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "kind" "TaxKind" NOT NULL,
    "treatment" "TaxTreatmentKind" NOT NULL,
    "shareBy" "DeliveryShare",
    "fromOn" DATE NOT NULL,
    "untilOn" DATE,

    CONSTRAINT "TaxTreatment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TaxState" (
    "state" TEXT NOT NULL,
    "registeredFrom" DATE,
    "thresholdCents" BIGINT,
    "thresholdSales" INTEGER,
    "needsBoth" BOOLEAN NOT NULL DEFAULT false,
    "window" "ThresholdWindow" NOT NULL DEFAULT 'this_or_last_calendar_year',
    "lookedUpOn" DATE,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "TaxState_pkey" PRIMARY KEY ("state")
);

-- CreateTable
CREATE TABLE "Credit" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "kind" "CreditKind" NOT NULL,
    "collectorId" UUID,
    "expiresOn" DATE,
    "note" TEXT NOT NULL DEFAULT '',
    "balanceCents" BIGINT NOT NULL DEFAULT 0,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Credit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CreditMovement" (
    "id" BIGSERIAL NOT NULL,
    "creditId" UUID NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "saleId" UUID,
    "returnId" UUID,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CreditMovement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "WholesaleOrder" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "collectorId" UUID NOT NULL,
    "askedOn" DATE NOT NULL,
    "shipOn" DATE,
    "pricePercent" DECIMAL(5,2) NOT NULL,
    "netDays" INTEGER NOT NULL,
    "freightCents" BIGINT NOT NULL DEFAULT 0,
    "theirNumber" TEXT NOT NULL DEFAULT '',
    "terms" TEXT NOT NULL DEFAULT '',
    "saleId" UUID,
    "dueOn" DATE,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),
    "endedWhy" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "WholesaleOrder_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "WholesaleLine" (
    "orderId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "skuId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "unitPriceCents" BIGINT NOT NULL,

    CONSTRAINT "WholesaleLine_pkey" PRIMARY KEY ("orderId","position")
);

-- CreateTable
CREATE TABLE "TownPromise" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "town" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "fromOn" DATE NOT NULL,
    "untilOn" DATE,

    CONSTRAINT "TownPromise_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SettlementPayment" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "saleId" UUID NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "kind" "TenderKind" NOT NULL,
    "reference" TEXT NOT NULL DEFAULT '',
    "receivedOn" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entryId" UUID NOT NULL,

    CONSTRAINT "SettlementPayment_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "OnApprovalBack_approvalId_idx" ON "OnApprovalBack"("approvalId");

-- CreateIndex
CREATE UNIQUE INDEX "Mould_code_key" ON "Mould"("code");

-- CreateIndex
CREATE INDEX "Mould_designId_idx" ON "Mould"("designId");

-- CreateIndex
CREATE INDEX "MouldCast_mouldId_idx" ON "MouldCast"("mouldId");

-- CreateIndex
CREATE UNIQUE INDEX "PriceChange_skuId_fromOn_key" ON "PriceChange"("skuId", "fromOn");

-- CreateIndex
CREATE UNIQUE INDEX "PieceSet_code_key" ON "PieceSet"("code");

-- CreateIndex
CREATE INDEX "ResaleCertificate_collectorId_idx" ON "ResaleCertificate"("collectorId");

-- CreateIndex
CREATE UNIQUE INDEX "ReferralFee_saleId_key" ON "ReferralFee"("saleId");

-- CreateIndex
CREATE UNIQUE INDEX "ReferralFee_entryId_key" ON "ReferralFee"("entryId");

-- CreateIndex
CREATE UNIQUE INDEX "ReferralFee_paidEntryId_key" ON "ReferralFee"("paidEntryId");

-- CreateIndex
CREATE INDEX "ReferralFee_collectorId_idx" ON "ReferralFee"("collectorId");

-- CreateIndex
CREATE UNIQUE INDEX "Consignee_collectorId_key" ON "Consignee"("collectorId");

-- CreateIndex
CREATE UNIQUE INDEX "Consignee_placeId_key" ON "Consignee"("placeId");

-- CreateIndex
CREATE UNIQUE INDEX "ConsignmentNote_number_key" ON "ConsignmentNote"("number");

-- CreateIndex
CREATE UNIQUE INDEX "ConsignmentNote_transferId_key" ON "ConsignmentNote"("transferId");

-- CreateIndex
CREATE UNIQUE INDEX "ConsignmentReport_number_key" ON "ConsignmentReport"("number");

-- CreateIndex
CREATE UNIQUE INDEX "ConsignmentReport_saleId_key" ON "ConsignmentReport"("saleId");

-- CreateIndex
CREATE UNIQUE INDEX "DrawerCount_number_key" ON "DrawerCount"("number");

-- CreateIndex
CREATE UNIQUE INDEX "DrawerCount_entryId_key" ON "DrawerCount"("entryId");

-- CreateIndex
CREATE INDEX "DrawerCount_on_idx" ON "DrawerCount"("on");

-- CreateIndex
CREATE UNIQUE INDEX "PettyCash_number_key" ON "PettyCash"("number");

-- CreateIndex
CREATE UNIQUE INDEX "PettyCash_entryId_key" ON "PettyCash"("entryId");

-- CreateIndex
CREATE UNIQUE INDEX "Fair_number_key" ON "Fair"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Fair_placeId_key" ON "Fair"("placeId");

-- CreateIndex
CREATE UNIQUE INDEX "Hold_number_key" ON "Hold"("number");

-- CreateIndex
CREATE INDEX "Hold_skuId_placeId_idx" ON "Hold"("skuId", "placeId");

-- CreateIndex
CREATE INDEX "Hold_layawayId_idx" ON "Hold"("layawayId");

-- CreateIndex
CREATE INDEX "Waiting_skuId_idx" ON "Waiting"("skuId");

-- CreateIndex
CREATE UNIQUE INDEX "OnApproval_number_key" ON "OnApproval"("number");

-- CreateIndex
CREATE UNIQUE INDEX "OnApproval_transferId_key" ON "OnApproval"("transferId");

-- CreateIndex
CREATE INDEX "OnApprovalPicture_approvalId_idx" ON "OnApprovalPicture"("approvalId");

-- CreateIndex
CREATE UNIQUE INDEX "Layaway_number_key" ON "Layaway"("number");

-- CreateIndex
CREATE UNIQUE INDEX "SpecialOrder_number_key" ON "SpecialOrder"("number");

-- CreateIndex
CREATE UNIQUE INDEX "SpecialOrder_jobId_key" ON "SpecialOrder"("jobId");

-- CreateIndex
CREATE INDEX "SpecialOrder_collectorId_idx" ON "SpecialOrder"("collectorId");

-- CreateIndex
CREATE UNIQUE INDEX "GoodsReturn_number_key" ON "GoodsReturn"("number");

-- CreateIndex
CREATE UNIQUE INDEX "GoodsReturn_entryId_key" ON "GoodsReturn"("entryId");

-- CreateIndex
CREATE INDEX "GoodsReturn_saleId_idx" ON "GoodsReturn"("saleId");

-- CreateIndex
CREATE INDEX "GoodsReturn_returnedOn_idx" ON "GoodsReturn"("returnedOn");

-- CreateIndex
CREATE INDEX "GoodsReturnLine_returnId_idx" ON "GoodsReturnLine"("returnId");

-- CreateIndex
CREATE INDEX "GoodsReturnLine_saleLineId_idx" ON "GoodsReturnLine"("saleLineId");

-- CreateIndex
CREATE INDEX "Refund_returnId_idx" ON "Refund"("returnId");

-- CreateIndex
CREATE INDEX "Refund_tenderId_idx" ON "Refund"("tenderId");

-- CreateIndex
CREATE INDEX "SaleDiscount_lineId_idx" ON "SaleDiscount"("lineId");

-- CreateIndex
CREATE UNIQUE INDEX "Slip_saleId_key" ON "Slip"("saleId");

-- CreateIndex
CREATE INDEX "Slip_changedAt_idx" ON "Slip"("changedAt");

-- CreateIndex
CREATE UNIQUE INDEX "StockTransfer_number_key" ON "StockTransfer"("number");

-- CreateIndex
CREATE UNIQUE INDEX "StockCount_number_key" ON "StockCount"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Credit_code_key" ON "Credit"("code");

-- CreateIndex
CREATE INDEX "CreditMovement_creditId_idx" ON "CreditMovement"("creditId");

-- CreateIndex
CREATE UNIQUE INDEX "WholesaleOrder_number_key" ON "WholesaleOrder"("number");

-- CreateIndex
CREATE UNIQUE INDEX "WholesaleOrder_saleId_key" ON "WholesaleOrder"("saleId");

-- CreateIndex
CREATE UNIQUE INDEX "SettlementPayment_number_key" ON "SettlementPayment"("number");

-- CreateIndex
CREATE UNIQUE INDEX "SettlementPayment_entryId_key" ON "SettlementPayment"("entryId");

-- CreateIndex
CREATE INDEX "SettlementPayment_saleId_idx" ON "SettlementPayment"("saleId");

-- CreateIndex
CREATE INDEX "Posting_orderId_idx" ON "Posting"("orderId");

-- CreateIndex
CREATE INDEX "Posting_layawayId_idx" ON "Posting"("layawayId");

-- CreateIndex
CREATE INDEX "Posting_creditId_idx" ON "Posting"("creditId");

-- CreateIndex
CREATE INDEX "Posting_collectorId_idx" ON "Posting"("collectorId");

-- CreateIndex
CREATE INDEX "StockMovement_transferId_idx" ON "StockMovement"("transferId");

-- CreateIndex
CREATE INDEX "StockMovement_returnLineId_idx" ON "StockMovement"("returnLineId");

-- CreateIndex
CREATE INDEX "StockMovement_countId_idx" ON "StockMovement"("countId");

-- AddForeignKey
ALTER TABLE "OnApprovalBack" ADD CONSTRAINT "OnApprovalBack_transferId_fkey" FOREIGN KEY ("transferId") REFERENCES "StockTransfer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OnApprovalBack" ADD CONSTRAINT "OnApprovalBack_approvalId_fkey" FOREIGN KEY ("approvalId") REFERENCES "OnApproval"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sku" ADD CONSTRAINT "Sku_firstSkuId_fkey" FOREIGN KEY ("firstSkuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Edition" ADD CONSTRAINT "Edition_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Edition" ADD CONSTRAINT "Edition_mouldId_fkey" FOREIGN KEY ("mouldId") REFERENCES "Mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EditionPiece" ADD CONSTRAINT "EditionPiece_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EditionPiece" ADD CONSTRAINT "EditionPiece_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Mould" ADD CONSTRAINT "Mould_designId_fkey" FOREIGN KEY ("designId") REFERENCES "Design"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MouldCast" ADD CONSTRAINT "MouldCast_mouldId_fkey" FOREIGN KEY ("mouldId") REFERENCES "Mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MouldCast" ADD CONSTRAINT "MouldCast_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PriceChange" ADD CONSTRAINT "PriceChange_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PieceSetMember" ADD CONSTRAINT "PieceSetMember_setId_fkey" FOREIGN KEY ("setId") REFERENCES "PieceSet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PieceSetMember" ADD CONSTRAINT "PieceSetMember_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TradeTerms" ADD CONSTRAINT "TradeTerms_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ResaleCertificate" ADD CONSTRAINT "ResaleCertificate_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ResaleCertificate" ADD CONSTRAINT "ResaleCertificate_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferralFee" ADD CONSTRAINT "ReferralFee_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferralFee" ADD CONSTRAINT "ReferralFee_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferralFee" ADD CONSTRAINT "ReferralFee_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Consignee" ADD CONSTRAINT "Consignee_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Consignee" ADD CONSTRAINT "Consignee_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentNote" ADD CONSTRAINT "ConsignmentNote_consigneeId_fkey" FOREIGN KEY ("consigneeId") REFERENCES "Consignee"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentNote" ADD CONSTRAINT "ConsignmentNote_transferId_fkey" FOREIGN KEY ("transferId") REFERENCES "StockTransfer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentNoteLine" ADD CONSTRAINT "ConsignmentNoteLine_noteId_fkey" FOREIGN KEY ("noteId") REFERENCES "ConsignmentNote"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentNoteLine" ADD CONSTRAINT "ConsignmentNoteLine_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentReport" ADD CONSTRAINT "ConsignmentReport_consigneeId_fkey" FOREIGN KEY ("consigneeId") REFERENCES "Consignee"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentReport" ADD CONSTRAINT "ConsignmentReport_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentReportLine" ADD CONSTRAINT "ConsignmentReportLine_reportId_fkey" FOREIGN KEY ("reportId") REFERENCES "ConsignmentReport"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConsignmentReportLine" ADD CONSTRAINT "ConsignmentReportLine_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DrawerCount" ADD CONSTRAINT "DrawerCount_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PettyCash" ADD CONSTRAINT "PettyCash_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Fair" ADD CONSTRAINT "Fair_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Fair" ADD CONSTRAINT "Fair_taxPlaceId_fkey" FOREIGN KEY ("taxPlaceId") REFERENCES "TaxPlace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FairPrice" ADD CONSTRAINT "FairPrice_fairId_fkey" FOREIGN KEY ("fairId") REFERENCES "Fair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FairPrice" ADD CONSTRAINT "FairPrice_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Hold" ADD CONSTRAINT "Hold_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Hold" ADD CONSTRAINT "Hold_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Hold" ADD CONSTRAINT "Hold_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Hold" ADD CONSTRAINT "Hold_layawayId_fkey" FOREIGN KEY ("layawayId") REFERENCES "Layaway"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Hold" ADD CONSTRAINT "Hold_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SpecialOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Waiting" ADD CONSTRAINT "Waiting_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Waiting" ADD CONSTRAINT "Waiting_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OnApproval" ADD CONSTRAINT "OnApproval_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OnApproval" ADD CONSTRAINT "OnApproval_transferId_fkey" FOREIGN KEY ("transferId") REFERENCES "StockTransfer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OnApprovalLine" ADD CONSTRAINT "OnApprovalLine_approvalId_fkey" FOREIGN KEY ("approvalId") REFERENCES "OnApproval"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OnApprovalLine" ADD CONSTRAINT "OnApprovalLine_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OnApprovalPicture" ADD CONSTRAINT "OnApprovalPicture_approvalId_fkey" FOREIGN KEY ("approvalId") REFERENCES "OnApproval"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OnApprovalPicture" ADD CONSTRAINT "OnApprovalPicture_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Layaway" ADD CONSTRAINT "Layaway_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Layaway" ADD CONSTRAINT "Layaway_taxPlaceId_fkey" FOREIGN KEY ("taxPlaceId") REFERENCES "TaxPlace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LayawayLine" ADD CONSTRAINT "LayawayLine_layawayId_fkey" FOREIGN KEY ("layawayId") REFERENCES "Layaway"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LayawayLine" ADD CONSTRAINT "LayawayLine_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LayawayLine" ADD CONSTRAINT "LayawayLine_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LayawayDue" ADD CONSTRAINT "LayawayDue_layawayId_fkey" FOREIGN KEY ("layawayId") REFERENCES "Layaway"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Posting" ADD CONSTRAINT "Posting_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Posting" ADD CONSTRAINT "Posting_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SpecialOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Posting" ADD CONSTRAINT "Posting_layawayId_fkey" FOREIGN KEY ("layawayId") REFERENCES "Layaway"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Posting" ADD CONSTRAINT "Posting_creditId_fkey" FOREIGN KEY ("creditId") REFERENCES "Credit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SpecialOrder" ADD CONSTRAINT "SpecialOrder_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SpecialOrder" ADD CONSTRAINT "SpecialOrder_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SpecialOrder" ADD CONSTRAINT "SpecialOrder_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GoodsReturn" ADD CONSTRAINT "GoodsReturn_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GoodsReturn" ADD CONSTRAINT "GoodsReturn_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GoodsReturnLine" ADD CONSTRAINT "GoodsReturnLine_returnId_fkey" FOREIGN KEY ("returnId") REFERENCES "GoodsReturn"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GoodsReturnLine" ADD CONSTRAINT "GoodsReturnLine_saleLineId_fkey" FOREIGN KEY ("saleLineId") REFERENCES "SaleLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GoodsReturnLine" ADD CONSTRAINT "GoodsReturnLine_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GoodsReturnTax" ADD CONSTRAINT "GoodsReturnTax_returnId_fkey" FOREIGN KEY ("returnId") REFERENCES "GoodsReturn"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Refund" ADD CONSTRAINT "Refund_returnId_fkey" FOREIGN KEY ("returnId") REFERENCES "GoodsReturn"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Refund" ADD CONSTRAINT "Refund_tenderId_fkey" FOREIGN KEY ("tenderId") REFERENCES "Tender"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_certificateId_fkey" FOREIGN KEY ("certificateId") REFERENCES "ResaleCertificate"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_referredById_fkey" FOREIGN KEY ("referredById") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_fairId_fkey" FOREIGN KEY ("fairId") REFERENCES "Fair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleLine" ADD CONSTRAINT "SaleLine_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleLine" ADD CONSTRAINT "SaleLine_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SpecialOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleLine" ADD CONSTRAINT "SaleLine_layawayId_fkey" FOREIGN KEY ("layawayId") REFERENCES "Layaway"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleLine" ADD CONSTRAINT "SaleLine_creditId_fkey" FOREIGN KEY ("creditId") REFERENCES "Credit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tender" ADD CONSTRAINT "Tender_creditId_fkey" FOREIGN KEY ("creditId") REFERENCES "Credit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tender" ADD CONSTRAINT "Tender_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SpecialOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tender" ADD CONSTRAINT "Tender_layawayId_fkey" FOREIGN KEY ("layawayId") REFERENCES "Layaway"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleDiscount" ADD CONSTRAINT "SaleDiscount_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "SaleLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ToCollect" ADD CONSTRAINT "ToCollect_saleLineId_fkey" FOREIGN KEY ("saleLineId") REFERENCES "SaleLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ToCollect" ADD CONSTRAINT "ToCollect_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DeliveryProof" ADD CONSTRAINT "DeliveryProof_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DeliveryProof" ADD CONSTRAINT "DeliveryProof_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Slip" ADD CONSTRAINT "Slip_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Slip" ADD CONSTRAINT "Slip_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Slip" ADD CONSTRAINT "Slip_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_transferId_fkey" FOREIGN KEY ("transferId") REFERENCES "StockTransfer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_returnLineId_fkey" FOREIGN KEY ("returnLineId") REFERENCES "GoodsReturnLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_countId_fkey" FOREIGN KEY ("countId") REFERENCES "StockCount"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockTransfer" ADD CONSTRAINT "StockTransfer_fromId_fkey" FOREIGN KEY ("fromId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockTransfer" ADD CONSTRAINT "StockTransfer_toId_fkey" FOREIGN KEY ("toId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockCount" ADD CONSTRAINT "StockCount_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockCountLine" ADD CONSTRAINT "StockCountLine_countId_fkey" FOREIGN KEY ("countId") REFERENCES "StockCount"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockCountLine" ADD CONSTRAINT "StockCountLine_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DataLoad" ADD CONSTRAINT "DataLoad_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Credit" ADD CONSTRAINT "Credit_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CreditMovement" ADD CONSTRAINT "CreditMovement_creditId_fkey" FOREIGN KEY ("creditId") REFERENCES "Credit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CreditMovement" ADD CONSTRAINT "CreditMovement_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CreditMovement" ADD CONSTRAINT "CreditMovement_returnId_fkey" FOREIGN KEY ("returnId") REFERENCES "GoodsReturn"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WholesaleOrder" ADD CONSTRAINT "WholesaleOrder_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WholesaleOrder" ADD CONSTRAINT "WholesaleOrder_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WholesaleLine" ADD CONSTRAINT "WholesaleLine_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "WholesaleOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WholesaleLine" ADD CONSTRAINT "WholesaleLine_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TownPromise" ADD CONSTRAINT "TownPromise_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SettlementPayment" ADD CONSTRAINT "SettlementPayment_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SettlementPayment" ADD CONSTRAINT "SettlementPayment_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------
-- What must always be true, held here so that no program can get round it.
-- Values that this migration adds to an enum are compared as text: PostgreSQL lets nobody use
-- them before the transaction that added them has ended.
-- ---------------------------------------------------------------------------------------------

-- Every line says how much of it was taxed; those that were there before were taxed whole or not at all.
ALTER TABLE "SaleLine" DISABLE TRIGGER "SaleLine_never_changed";
UPDATE "SaleLine" SET "taxableCents" = "netCents" WHERE taxable;
ALTER TABLE "SaleLine" ENABLE TRIGGER "SaleLine_never_changed";

-- Answered by another one, never changed.
DO $$
DECLARE kept text;
BEGIN
  FOREACH kept IN ARRAY ARRAY[
    'SaleDiscount', 'GoodsReturn', 'GoodsReturnLine', 'GoodsReturnTax', 'Refund', 'CreditMovement',
    'StockTransfer', 'ConsignmentNote', 'ConsignmentNoteLine', 'ConsignmentReport',
    'ConsignmentReportLine', 'SettlementPayment', 'DrawerCount', 'PettyCash', 'MouldCast',
    'LayawayLine', 'LayawayDue', 'OnApprovalLine', 'OnApprovalPicture', 'OnApprovalBack'
  ] LOOP
    EXECUTE format('CREATE TRIGGER "%s_never_changed" BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', kept, kept);
    EXECUTE format('CREATE TRIGGER "%s_never_emptied" BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', kept, kept);
  END LOOP;
END $$;

ALTER TABLE "Gallery"
  ADD CONSTRAINT gallery_shares_are_shares CHECK (
    "staffDiscountPercent" BETWEEN 0 AND 100 AND "restockingFeePercent" BETWEEN 0 AND 100
    AND "layawayDownPercent" BETWEEN 0 AND 100),
  ADD CONSTRAINT gallery_spans_are_positive CHECK (
    "returnDays" >= 0 AND "holdHours" > 0 AND "layawayDays" > 0 AND "approvalDays" > 0 AND "drawerFloatCents" >= 0);

-- Stock: holds never exceed what is on hand.
ALTER TABLE "StockLevel"
  ADD CONSTRAINT holds_never_exceed_on_hand CHECK (held >= 0 AND held <= greatest("onHand", 0));
ALTER TABLE "Hold"
  ADD CONSTRAINT hold_has_pieces CHECK (quantity > 0),
  ADD CONSTRAINT hold_names_somebody CHECK (length(trim("forWhom")) > 0),
  ADD CONSTRAINT hold_ends_somehow CHECK (("endedAt" IS NULL) = ("endedHow" IS NULL)),
  ADD CONSTRAINT hold_has_an_end CHECK ("untilAt" IS NOT NULL OR "layawayId" IS NOT NULL OR "orderId" IS NOT NULL),
  ADD CONSTRAINT hold_of_a_number_is_one CHECK ("editionNumber" IS NULL OR quantity = 1);

CREATE FUNCTION hold_changes_level() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE change int;
BEGIN
  IF TG_OP = 'INSERT' THEN
    change := CASE WHEN NEW."endedAt" IS NULL THEN NEW.quantity ELSE 0 END;
  ELSE
    IF OLD."endedAt" IS NOT NULL AND (NEW."endedAt", NEW."endedHow") IS DISTINCT FROM (OLD."endedAt", OLD."endedHow")
       OR (NEW."skuId", NEW."placeId", NEW.quantity, NEW."editionNumber", NEW."layawayId")
         IS DISTINCT FROM (OLD."skuId", OLD."placeId", OLD.quantity, OLD."editionNumber", OLD."layawayId") THEN
      RAISE EXCEPTION '[hold_ends_once] A hold ends once, and what is held stays what it is.';
    END IF;
    change := CASE WHEN OLD."endedAt" IS NULL AND NEW."endedAt" IS NOT NULL THEN -NEW.quantity ELSE 0 END;
  END IF;
  IF change = 0 THEN RETURN NULL; END IF;
  UPDATE "StockLevel" SET held = held + change WHERE "skuId" = NEW."skuId" AND "placeId" = NEW."placeId";
  IF NOT FOUND THEN
    RAISE EXCEPTION '[holds_never_exceed_on_hand] There is nothing there to hold.';
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER hold_changes_level AFTER INSERT OR UPDATE ON "Hold"
  FOR EACH ROW EXECUTE FUNCTION hold_changes_level();
CREATE TRIGGER hold_is_never_deleted BEFORE DELETE ON "Hold" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER hold_is_never_emptied BEFORE TRUNCATE ON "Hold" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- Editions, one-offs and seconds keep what makes them so, however pieces move.
ALTER TABLE "StockMovement"
  ADD CONSTRAINT numbered_piece_moves_alone CHECK ("editionNumber" IS NULL OR ("editionNumber" > 0 AND abs(quantity) = 1));
ALTER TABLE "Edition"
  ADD CONSTRAINT edition_has_a_size CHECK (size > 0 AND "artistProofs" >= 0);
ALTER TABLE "Sku"
  ADD CONSTRAINT second_is_no_edition CHECK (grade = 'first' OR making <> 'edition'),
  ADD CONSTRAINT first_has_no_first CHECK (grade <> 'first' OR "firstSkuId" IS NULL);

CREATE FUNCTION movement_keeps_the_marks() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE moved record;
BEGIN
  IF EXISTS (SELECT 1 FROM arrived JOIN "Sku" sku ON sku.id = arrived."skuId" JOIN "Place" place ON place.id = arrived."placeId"
      WHERE arrived.quantity > 0 AND place.kind = 'consignee' AND sku.grade <> 'first') THEN
    RAISE EXCEPTION '[seconds_are_not_consigned] A second is not given to another gallery.';
  END IF;
  IF EXISTS (SELECT 1 FROM arrived JOIN "Place" place ON place.id = arrived."placeId" WHERE place."closedAt" IS NOT NULL) THEN
    RAISE EXCEPTION '[closed_place_holds_nothing] Nothing moves at a place that is closed.';
  END IF;
  IF EXISTS (SELECT 1 FROM "StockLevel" level JOIN "Sku" sku ON sku.id = level."skuId"
      WHERE sku.making = 'one_off' AND level."skuId" IN (SELECT "skuId" FROM arrived WHERE quantity > 0)
      GROUP BY level."skuId" HAVING sum(level."onHand") > 1) THEN
    RAISE EXCEPTION '[one_off_exists_once] A one-off exists once.';
  END IF;
  IF EXISTS (SELECT 1 FROM arrived JOIN "Edition" edition ON edition."skuId" = arrived."skuId" WHERE arrived."editionNumber" IS NULL) THEN
    RAISE EXCEPTION '[edition_moves_by_number] A piece of an edition moves by its number.';
  END IF;
  FOR moved IN SELECT * FROM arrived WHERE "editionNumber" IS NOT NULL ORDER BY id LOOP
    IF moved.quantity = 1 THEN
      IF NOT EXISTS (SELECT 1 FROM "Edition" WHERE "skuId" = moved."skuId" AND moved."editionNumber" <= size + "artistProofs") THEN
        RAISE EXCEPTION '[number_belongs_to_edition] Number % is beyond the edition.', moved."editionNumber";
      END IF;
      INSERT INTO "EditionPiece" AS piece ("skuId", number, "placeId") VALUES (moved."skuId", moved."editionNumber", moved."placeId")
        ON CONFLICT ("skuId", number) DO UPDATE SET "placeId" = EXCLUDED."placeId" WHERE piece."placeId" IS NULL;
      IF NOT FOUND THEN
        RAISE EXCEPTION '[number_exists_once] Number % is here already.', moved."editionNumber";
      END IF;
    ELSE
      UPDATE "EditionPiece" SET "placeId" = NULL
        WHERE "skuId" = moved."skuId" AND number = moved."editionNumber" AND "placeId" = moved."placeId";
      IF NOT FOUND THEN
        RAISE EXCEPTION '[number_leaves_where_it_is] Number % is not there.', moved."editionNumber";
      END IF;
    END IF;
  END LOOP;
  RETURN NULL;
END $$;
-- By its name it fires after the levels were changed.
CREATE TRIGGER movement_keeps_the_marks AFTER INSERT ON "StockMovement"
  REFERENCING NEW TABLE AS arrived FOR EACH STATEMENT EXECUTE FUNCTION movement_keeps_the_marks();
CREATE TRIGGER number_only_by_movement BEFORE INSERT OR UPDATE OR DELETE OR TRUNCATE ON "EditionPiece"
  FOR EACH STATEMENT EXECUTE FUNCTION level_only_by_movement();

CREATE FUNCTION closed_place_holds_nothing() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW."closedAt" IS NOT NULL AND EXISTS (SELECT 1 FROM "StockLevel" WHERE "placeId" = NEW.id AND "onHand" > 0) THEN
    RAISE EXCEPTION '[closed_place_holds_nothing] A place is closed when nothing stands there.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER closed_place_holds_nothing BEFORE UPDATE ON "Place" FOR EACH ROW EXECUTE FUNCTION closed_place_holds_nothing();

CREATE FUNCTION edition_keeps_its_word() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'INSERT' THEN
    IF NOT EXISTS (SELECT 1 FROM "Sku" WHERE id = NEW."skuId" AND making = 'edition' AND grade = 'first')
       OR EXISTS (SELECT 1 FROM "StockMovement" WHERE "skuId" = NEW."skuId") THEN
      RAISE EXCEPTION '[edition_is_stated_first] An edition is stated of a first, before its first piece comes.';
    END IF;
  ELSIF (NEW."skuId", NEW.size, NEW."artistProofs", NEW."statedOn") IS DISTINCT FROM (OLD."skuId", OLD.size, OLD."artistProofs", OLD."statedOn") THEN
    RAISE EXCEPTION '[edition_size_is_never_changed] Once an edition is stated its size stays.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER edition_keeps_its_word BEFORE INSERT OR UPDATE ON "Edition" FOR EACH ROW EXECUTE FUNCTION edition_keeps_its_word();
CREATE TRIGGER edition_is_never_deleted BEFORE DELETE ON "Edition" FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE FUNCTION second_keeps_its_mark() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.grade <> 'first' AND (NEW.grade, NEW."firstSkuId") IS DISTINCT FROM (OLD.grade, OLD."firstSkuId") THEN
    RAISE EXCEPTION '[second_keeps_its_mark] A second is never a first again.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER second_keeps_its_mark BEFORE UPDATE ON "Sku" FOR EACH ROW EXECUTE FUNCTION second_keeps_its_mark();

ALTER TABLE "Mould" ADD CONSTRAINT mould_has_a_life CHECK ("lifeCasts" > 0 AND "begunWith" >= 0);
ALTER TABLE "MouldCast" ADD CONSTRAINT cast_is_counted CHECK (casts > 0);
ALTER TABLE "PriceChange" ADD CONSTRAINT new_price_is_not_negative CHECK ("priceCents" >= 0);
ALTER TABLE "PieceSetMember" ADD CONSTRAINT set_member_has_pieces CHECK (quantity > 0);
ALTER TABLE "PieceSet" ADD CONSTRAINT set_code_is_upper_case CHECK (code ~ '^[A-Z0-9]+(-[A-Z0-9]+)*$' AND length(code) BETWEEN 3 AND 24);

-- The price of a SKU on a day: the newest change that holds by then, or the one it began with.
CREATE FUNCTION price_on(sku uuid, day date) RETURNS bigint LANGUAGE sql STABLE AS $$
  SELECT coalesce(
    (SELECT "priceCents" FROM "PriceChange" WHERE "skuId" = sku AND "fromOn" <= day ORDER BY "fromOn" DESC LIMIT 1),
    (SELECT "priceCents" FROM "Sku" WHERE id = sku))
$$;

-- What moves from one place to another comes whole.
CREATE FUNCTION transfer_loses_nothing() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE this uuid;
BEGIN
  this := CASE TG_TABLE_NAME WHEN 'StockTransfer' THEN (to_jsonb(NEW) ->> 'id')::uuid ELSE (to_jsonb(NEW) ->> 'transferId')::uuid END;
  IF this IS NULL THEN RETURN NULL; END IF;
  IF NOT EXISTS (SELECT 1 FROM "StockMovement" WHERE "transferId" = this)
     OR EXISTS (SELECT 1 FROM "StockMovement" m JOIN "StockTransfer" t ON t.id = m."transferId" WHERE t.id = this
       AND (m.reason::text <> 'moved' OR (m.quantity < 0 AND m."placeId" <> t."fromId") OR (m.quantity > 0 AND m."placeId" <> t."toId")))
     OR EXISTS (SELECT 1 FROM "StockMovement" WHERE "transferId" = this GROUP BY "skuId", "editionNumber" HAVING sum(quantity) <> 0) THEN
    RAISE EXCEPTION '[transfer_loses_nothing] What leaves one place comes whole to the other.';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER transfer_loses_nothing AFTER INSERT ON "StockTransfer"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION transfer_loses_nothing();
CREATE CONSTRAINT TRIGGER moved_pieces_lose_nothing AFTER INSERT ON "StockMovement"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW."transferId" IS NOT NULL) EXECUTE FUNCTION transfer_loses_nothing();
ALTER TABLE "StockTransfer" ADD CONSTRAINT transfer_goes_somewhere CHECK ("fromId" <> "toId");
ALTER TABLE "StockCountLine" ADD CONSTRAINT counted_is_not_negative CHECK (counted >= 0);

-- A sale adds up: its lines, its discounts, its taxes and its tenders, the pieces that left for it,
-- and no deposit is used that was not paid.
ALTER TABLE "SaleLine"
  ADD CONSTRAINT sale_line_is_price_less_discounts CHECK ("netCents" = "unitPriceCents" * quantity - "discountCents"),
  ADD CONSTRAINT sale_line_is_taxed_at_most_whole CHECK ("discountCents" >= 0 AND "taxableCents" BETWEEN 0 AND "netCents"),
  ADD CONSTRAINT sale_line_names_its_paper CHECK (
    (kind::text NOT IN ('instalment') OR "commissionId" IS NOT NULL)
    AND (kind::text <> 'order_deposit' OR "orderId" IS NOT NULL)
    AND ((kind::text = 'layaway_payment') = ("layawayId" IS NOT NULL))
    AND ((kind::text = 'voucher') = ("creditId" IS NOT NULL)));
ALTER TABLE "SaleDiscount" ADD CONSTRAINT discount_says_why CHECK ("amountCents" > 0 AND length(trim(reason)) > 0);
ALTER TABLE "Tender"
  ADD CONSTRAINT tender_names_its_credit CHECK ((kind::text IN ('voucher', 'store_credit')) = ("creditId" IS NOT NULL)),
  ADD CONSTRAINT tender_names_its_layaway CHECK ((kind::text = 'layaway') = ("layawayId" IS NOT NULL));
ALTER TABLE "CommissionPayment" DROP CONSTRAINT payment_is_money;
ALTER TABLE "CommissionPayment" ADD CONSTRAINT payment_is_money CHECK (kind::text NOT IN ('deposit', 'on_account', 'layaway'));

CREATE FUNCTION layaway_money(layaway uuid) RETURNS numeric LANGUAGE sql STABLE AS $$
  SELECT (SELECT coalesce(sum("netCents"), 0) FROM "SaleLine" WHERE "layawayId" = layaway)
    - (SELECT coalesce(sum(back."netCents"), 0) FROM "GoodsReturnLine" back JOIN "SaleLine" line ON line.id = back."saleLineId" WHERE line."layawayId" = layaway)
    - (SELECT coalesce(sum("amountCents"), 0) FROM "Tender" WHERE "layawayId" = layaway)
    + (SELECT coalesce(sum(refund."amountCents"), 0) FROM "Refund" refund JOIN "Tender" tender ON tender.id = refund."tenderId"
        WHERE tender."layawayId" = layaway AND refund.kind = tender.kind)
$$;
CREATE FUNCTION order_money(special uuid) RETURNS numeric LANGUAGE sql STABLE AS $$
  SELECT (SELECT coalesce(sum("netCents"), 0) FROM "SaleLine" WHERE "orderId" = special AND kind::text = 'order_deposit')
    - (SELECT coalesce(sum(back."netCents"), 0) FROM "GoodsReturnLine" back JOIN "SaleLine" line ON line.id = back."saleLineId"
        WHERE line."orderId" = special AND line.kind::text = 'order_deposit')
    - (SELECT coalesce(sum("amountCents"), 0) FROM "Tender" WHERE "orderId" = special)
    + (SELECT coalesce(sum(refund."amountCents"), 0) FROM "Refund" refund JOIN "Tender" tender ON tender.id = refund."tenderId"
        WHERE tender."orderId" = special AND refund.kind = tender.kind)
$$;

CREATE OR REPLACE FUNCTION sale_adds_up() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  this "Sale"; net numeric; tax numeric; by_authority numeric; paid numeric; unmoved int; undiscounted int;
BEGIN
  SELECT * INTO this FROM "Sale" WHERE id =
    CASE TG_TABLE_NAME WHEN 'Sale' THEN (to_jsonb(NEW) ->> 'id')::uuid ELSE (to_jsonb(NEW) ->> 'saleId')::uuid END;
  SELECT coalesce(sum("netCents"), 0), coalesce(sum("taxCents"), 0) INTO net, tax FROM "SaleLine" WHERE "saleId" = this.id;
  SELECT coalesce(sum("taxCents"), 0) INTO by_authority FROM "SaleTax" WHERE "saleId" = this.id;
  SELECT coalesce(sum("amountCents"), 0) INTO paid FROM "Tender" WHERE "saleId" = this.id;
  SELECT count(*) INTO unmoved FROM "SaleLine" line WHERE line."saleId" = this.id AND line.kind = 'piece'
    AND line.quantity <> coalesce((SELECT -sum(m.quantity) FROM "StockMovement" m WHERE m."saleLineId" = line.id AND m.reason = 'sold'), 0);
  SELECT count(*) INTO undiscounted FROM "SaleLine" line WHERE line."saleId" = this.id
    AND line."discountCents" <> coalesce((SELECT sum(d."amountCents") FROM "SaleDiscount" d WHERE d."lineId" = line.id), 0);
  IF net <> this."netCents" OR tax <> this."taxCents" OR by_authority <> tax
     OR net + tax <> this."totalCents" OR paid <> this."totalCents" OR unmoved > 0 OR undiscounted > 0
     OR NOT EXISTS (SELECT 1 FROM "SaleLine" WHERE "saleId" = this.id) THEN
    RAISE EXCEPTION '[sale_adds_up] Sale % does not add up: lines %, tax % (% by authority), total %, paid %, % lines without their pieces, % without their discounts.',
      this.number, net, tax, by_authority, this."totalCents", paid, unmoved, undiscounted;
  END IF;
  IF EXISTS (SELECT 1 FROM "Tender" WHERE "saleId" = this.id AND
      (("layawayId" IS NOT NULL AND layaway_money("layawayId") < 0) OR ("orderId" IS NOT NULL AND order_money("orderId") < 0))) THEN
    RAISE EXCEPTION '[deposit_is_used_once] Sale % uses a deposit that is not there.', this.number;
  END IF;
  RETURN NULL;
END $$;

CREATE FUNCTION discount_adds_up() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (SELECT "discountCents" FROM "SaleLine" WHERE id = NEW."lineId") <>
     (SELECT sum("amountCents") FROM "SaleDiscount" WHERE "lineId" = NEW."lineId") THEN
    RAISE EXCEPTION '[sale_adds_up] The discounts of a line add up to what was taken off.';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER discount_adds_up AFTER INSERT ON "SaleDiscount"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION discount_adds_up();

-- Vouchers and store credits: the balance is the sum of the movements and never below zero.
ALTER TABLE "Credit"
  ADD CONSTRAINT credit_never_below_zero CHECK ("balanceCents" >= 0),
  ADD CONSTRAINT credit_code_is_upper_case CHECK (code = upper(code) AND length(code) >= 6);
ALTER TABLE "CreditMovement" ADD CONSTRAINT credit_moves_something CHECK ("amountCents" <> 0);
CREATE FUNCTION credit_movement_changes_balance() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "Credit" SET "balanceCents" = "balanceCents" + NEW."amountCents" WHERE id = NEW."creditId";
  RETURN NULL;
END $$;
CREATE TRIGGER credit_movement_changes_balance AFTER INSERT ON "CreditMovement"
  FOR EACH ROW EXECUTE FUNCTION credit_movement_changes_balance();
CREATE FUNCTION balance_only_by_movement() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF pg_trigger_depth() < 2 AND NEW."balanceCents" <> (CASE TG_OP WHEN 'UPDATE' THEN OLD."balanceCents" ELSE 0 END) THEN
    RAISE EXCEPTION '[balance_only_by_movement] What is on a voucher changes only by a movement.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER balance_only_by_movement BEFORE INSERT OR UPDATE ON "Credit"
  FOR EACH ROW EXECUTE FUNCTION balance_only_by_movement();
CREATE TRIGGER credit_is_never_deleted BEFORE DELETE ON "Credit" FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- A return gives back at most what was sold, taxed and paid, however many try at once.
ALTER TABLE "GoodsReturn"
  ADD CONSTRAINT return_says_why CHECK (length(trim(reason)) > 0),
  ADD CONSTRAINT return_adds_up CHECK ("netCents" >= 0 AND "taxCents" >= 0 AND "feeCents" BETWEEN 0 AND "netCents"
    AND "totalCents" = "netCents" + "taxCents" - "feeCents");
ALTER TABLE "GoodsReturnLine"
  ADD CONSTRAINT return_line_has_pieces CHECK (quantity > 0 AND "netCents" >= 0 AND "taxCents" >= 0);
ALTER TABLE "Refund" ADD CONSTRAINT refund_is_positive CHECK ("amountCents" > 0);

CREATE FUNCTION sale_is_answered_one_at_a_time() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM 1 FROM "Sale" WHERE id = NEW."saleId" FOR UPDATE;
  RETURN NEW;
END $$;
CREATE TRIGGER sale_is_answered_one_at_a_time BEFORE INSERT ON "GoodsReturn"
  FOR EACH ROW EXECUTE FUNCTION sale_is_answered_one_at_a_time();

CREATE FUNCTION return_is_covered() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE this "GoodsReturn"; net numeric; tax numeric; by_authority numeric; refunded numeric;
BEGIN
  SELECT * INTO this FROM "GoodsReturn" WHERE id =
    CASE TG_TABLE_NAME WHEN 'GoodsReturn' THEN (to_jsonb(NEW) ->> 'id')::uuid ELSE (to_jsonb(NEW) ->> 'returnId')::uuid END;
  SELECT coalesce(sum("netCents"), 0), coalesce(sum("taxCents"), 0) INTO net, tax FROM "GoodsReturnLine" WHERE "returnId" = this.id;
  SELECT coalesce(sum("taxCents"), 0) INTO by_authority FROM "GoodsReturnTax" WHERE "returnId" = this.id;
  SELECT coalesce(sum("amountCents"), 0) INTO refunded FROM "Refund" WHERE "returnId" = this.id;
  IF net <> this."netCents" OR tax <> this."taxCents" OR by_authority <> tax OR refunded <> this."totalCents"
     OR NOT EXISTS (SELECT 1 FROM "GoodsReturnLine" WHERE "returnId" = this.id) THEN
    RAISE EXCEPTION '[return_adds_up] Return % does not add up: lines %, tax % (% by authority), given back %.',
      this.number, net, tax, by_authority, refunded;
  END IF;
  IF EXISTS (
    SELECT 1 FROM "GoodsReturnLine" back JOIN "GoodsReturn" ret ON ret.id = back."returnId" JOIN "SaleLine" line ON line.id = back."saleLineId"
    WHERE ret."saleId" = this."saleId"
    GROUP BY line.id
    HAVING line."saleId" <> this."saleId" OR sum(back.quantity) > line.quantity
      OR sum(back."netCents") > line."netCents" OR sum(back."taxCents") > line."taxCents"
      OR (sum(back.quantity) = line.quantity AND (sum(back."netCents") <> line."netCents" OR sum(back."taxCents") <> line."taxCents")))
  OR EXISTS (
    SELECT 1 FROM "GoodsReturnTax" back JOIN "GoodsReturn" ret ON ret.id = back."returnId"
    WHERE ret."saleId" = this."saleId" GROUP BY back.authority
    HAVING sum(back."taxCents") > coalesce((SELECT "taxCents" FROM "SaleTax" WHERE "saleId" = this."saleId" AND authority = back.authority), 0))
  THEN
    RAISE EXCEPTION '[return_is_covered] Sale of return %: no more comes back than was sold, and exactly its tax.', this.number;
  END IF;
  IF EXISTS (
    SELECT 1 FROM "Refund" refund JOIN "GoodsReturn" ret ON ret.id = refund."returnId" JOIN "Tender" tender ON tender.id = refund."tenderId"
    WHERE ret."saleId" = this."saleId"
    GROUP BY tender.id
    HAVING tender."saleId" <> this."saleId" OR sum(refund."amountCents") > tender."amountCents") THEN
    RAISE EXCEPTION '[refund_is_covered] Sale of return %: no more goes back than was paid that way.', this.number;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER return_is_covered AFTER INSERT ON "GoodsReturn"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION return_is_covered();
CREATE CONSTRAINT TRIGGER return_line_is_covered AFTER INSERT ON "GoodsReturnLine"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION return_is_covered();
CREATE CONSTRAINT TRIGGER return_tax_is_covered AFTER INSERT ON "GoodsReturnTax"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION return_is_covered();
CREATE CONSTRAINT TRIGGER refund_is_covered AFTER INSERT ON "Refund"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION return_is_covered();

-- What is owed for a sale is settled once.
ALTER TABLE "SettlementPayment"
  ADD CONSTRAINT settlement_is_money CHECK ("amountCents" > 0 AND kind::text NOT IN ('deposit', 'on_account', 'layaway', 'voucher', 'store_credit'));
CREATE FUNCTION settled_at_most_what_is_owed() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM 1 FROM "Sale" WHERE id = NEW."saleId" FOR UPDATE;
  IF (SELECT coalesce(sum("amountCents"), 0) FROM "SettlementPayment" WHERE "saleId" = NEW."saleId") >
     (SELECT coalesce(sum(tender."amountCents"), 0) FROM "Tender" tender WHERE tender."saleId" = NEW."saleId" AND tender.kind = 'on_account')
     - (SELECT coalesce(sum(refund."amountCents"), 0) FROM "Refund" refund JOIN "Tender" tender ON tender.id = refund."tenderId"
         WHERE tender."saleId" = NEW."saleId" AND tender.kind = 'on_account' AND refund.kind = 'on_account') THEN
    RAISE EXCEPTION '[settled_at_most_what_is_owed] No more is taken for a sale than is owed for it.';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER settled_at_most_what_is_owed AFTER INSERT ON "SettlementPayment"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION settled_at_most_what_is_owed();

-- The drawer.
ALTER TABLE "DrawerCount"
  ADD CONSTRAINT drawer_difference_is_explained CHECK ("countedCents" = "expectedCents" OR length(trim(reason)) > 0),
  ADD CONSTRAINT drawer_is_shared_out CHECK ("countedCents" >= 0 AND "floatCents" >= 0 AND "bankedCents" >= 0
    AND "floatCents" + "bankedCents" = "countedCents");
ALTER TABLE "PettyCash" ADD CONSTRAINT petty_cash_says_what CHECK ("amountCents" <> 0 AND length(trim(what)) > 0);

-- Tax: one rule at a time, certificates that begin before they end.
ALTER TABLE "TaxTreatment"
  ADD CONSTRAINT tax_treatment_ends_after_it_begins CHECK ("untilOn" > "fromOn"),
  ADD CONSTRAINT only_shipping_is_shared CHECK ("shareBy" IS NULL OR kind = 'shipping'),
  ADD CONSTRAINT one_tax_treatment_at_a_time EXCLUDE USING gist
    (state WITH =, kind WITH =, daterange("fromOn", "untilOn") WITH &&);
ALTER TABLE "TaxState" ADD CONSTRAINT threshold_is_positive CHECK (coalesce("thresholdCents", 1) > 0 AND coalesce("thresholdSales", 1) > 0);
ALTER TABLE "ResaleCertificate" ADD CONSTRAINT certificate_ends_after_it_begins CHECK ("untilOn" >= "fromOn");
ALTER TABLE "TradeTerms" ADD CONSTRAINT trade_share_is_a_share CHECK (percent > 0 AND percent < 100);
ALTER TABLE "ReferralFee" ADD CONSTRAINT referral_fee_is_positive CHECK ("amountCents" > 0);

-- Layaway, orders, fairs, other galleries, shops.
ALTER TABLE "Layaway" ADD CONSTRAINT layaway_adds_up CHECK ("downCents" >= 0 AND "totalCents" >= "netCents" AND "netCents" > 0 AND "finalOn" > "agreedOn");
ALTER TABLE "LayawayLine" ADD CONSTRAINT layaway_line_has_pieces CHECK (quantity > 0 AND "unitPriceCents" >= 0 AND "discountCents" >= 0);
ALTER TABLE "LayawayDue" ADD CONSTRAINT layaway_due_is_positive CHECK ("amountCents" > 0);
ALTER TABLE "SpecialOrder" ADD CONSTRAINT order_has_pieces CHECK (quantity > 0 AND "unitPriceCents" >= 0 AND "depositCents" >= 0);
ALTER TABLE "Fair"
  ADD CONSTRAINT fair_ends_after_it_begins CHECK ("untilOn" >= "fromOn"),
  ADD CONSTRAINT fair_costs_are_not_negative CHECK ("feeCents" >= 0 AND "travelCents" >= 0 AND "otherCents" >= 0 AND minutes >= 0);
ALTER TABLE "FairPrice" ADD CONSTRAINT fair_price_is_not_negative CHECK ("priceCents" >= 0);
ALTER TABLE "Consignee" ADD CONSTRAINT gallery_share_is_a_share CHECK ("sharePercent" > 0 AND "sharePercent" < 100);
ALTER TABLE "ConsignmentNoteLine" ADD CONSTRAINT note_line_has_pieces CHECK (quantity > 0 AND "retailCents" >= 0);
ALTER TABLE "ConsignmentReportLine" ADD CONSTRAINT report_line_has_pieces CHECK (quantity > 0 AND "dueCents" >= 0 AND "discountCents" >= 0);
ALTER TABLE "WholesaleOrder" ADD CONSTRAINT wholesale_share_is_a_share CHECK ("pricePercent" > 0 AND "pricePercent" <= 100 AND "netDays" >= 0 AND "freightCents" >= 0);
ALTER TABLE "WholesaleLine" ADD CONSTRAINT wholesale_line_has_pieces CHECK (quantity > 0 AND "unitPriceCents" >= 0);
ALTER TABLE "TownPromise"
  ADD CONSTRAINT town_is_promised_to_one EXCLUDE USING gist
    (lower(town) WITH =, lower(state) WITH =, daterange("fromOn", "untilOn") WITH &&);

-- The accounts of the counter and the stockroom.
INSERT INTO "Account" (code, name, nature) VALUES
  ('2010', 'Layaway money held', 'liability'),
  ('2020', 'Deposits on special orders', 'liability'),
  ('2200', 'Gift vouchers', 'liability'),
  ('2210', 'Store credit', 'liability'),
  ('2300', 'Referral fees owed', 'liability'),
  ('4020', 'Delivery charged', 'income'),
  ('4030', 'Installation and design work', 'income'),
  ('4040', 'Other sales', 'income'),
  ('4050', 'Restocking fees', 'income'),
  ('4060', 'Deposits kept', 'income'),
  ('4800', 'Discounts given', 'income'),
  ('4900', 'Brought back', 'income'),
  ('6100', 'Referral fees', 'expense'),
  ('6200', 'Other galleries'' shares', 'expense'),
  ('6300', 'Small things paid in cash', 'expense'),
  ('6900', 'Drawer differences', 'expense');
