-- Whoever leads is in one place at a time, and finding by a few letters, need these.
CREATE EXTENSION IF NOT EXISTS btree_gist;
CREATE EXTENSION IF NOT EXISTS pg_trgm;

-- CreateEnum
CREATE TYPE "Role" AS ENUM ('owner', 'gallery', 'maker', 'books');

-- CreateEnum
CREATE TYPE "Kind" AS ENUM ('relief_tile', 'plaque', 'wall_panel', 'lamp', 'platter', 'planter', 'bowl');

-- CreateEnum
CREATE TYPE "Making" AS ENUM ('open_stock', 'one_off', 'edition');

-- CreateEnum
CREATE TYPE "CollectorKind" AS ENUM ('person', 'household', 'designer', 'business');

-- CreateEnum
CREATE TYPE "Exposure" AS ENUM ('indoors', 'under_cover', 'outdoors');

-- CreateEnum
CREATE TYPE "WallKind" AS ENUM ('wood_studs', 'steel_studs', 'brick', 'block', 'concrete', 'plaster_on_lath', 'gypsum_board');

-- CreateEnum
CREATE TYPE "ApprovalHow" AS ENUM ('in_person', 'signed_card', 'by_mail');

-- CreateEnum
CREATE TYPE "AppointmentKind" AS ENUM ('hanging', 'delivery', 'site_visit');

-- CreateEnum
CREATE TYPE "AccountNature" AS ENUM ('asset', 'liability', 'income', 'expense', 'equity');

-- CreateEnum
CREATE TYPE "Channel" AS ENUM ('counter', 'fair', 'shipped', 'commission');

-- CreateEnum
CREATE TYPE "LineKind" AS ENUM ('piece', 'commission');

-- CreateEnum
CREATE TYPE "TenderKind" AS ENUM ('cash', 'card', 'cheque', 'bank_transfer', 'deposit', 'on_account');

-- CreateEnum
CREATE TYPE "MovementReason" AS ENUM ('opening', 'made', 'sold', 'counted', 'broken', 'missing');

-- CreateEnum
CREATE TYPE "Technique" AS ENUM ('slab_relief', 'slip_cast', 'press_moulded', 'thrown');

-- CreateTable
CREATE TABLE "Staff" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "signInName" TEXT NOT NULL,
    "passwordHash" TEXT NOT NULL,
    "roles" "Role"[],
    "active" BOOLEAN NOT NULL DEFAULT true,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Staff_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StaffSession" (
    "id" UUID NOT NULL,
    "staffId" UUID NOT NULL,
    "openedAt" TIMESTAMPTZ(3) NOT NULL,
    "seenAt" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),
    "device" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "StaffSession_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SignInTry" (
    "id" BIGSERIAL NOT NULL,
    "signInName" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "succeeded" BOOLEAN NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "SignInTry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AuditLine" (
    "id" BIGSERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "staffId" UUID,
    "did" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "facts" JSONB NOT NULL,

    CONSTRAINT "AuditLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Design" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "story" TEXT NOT NULL DEFAULT '',
    "pictureId" UUID,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Design_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Colourway" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "description" TEXT NOT NULL DEFAULT '',
    "pictureId" UUID,

    CONSTRAINT "Colourway_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Sku" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "designId" UUID NOT NULL,
    "colourwayId" UUID NOT NULL,
    "kind" "Kind" NOT NULL,
    "making" "Making" NOT NULL DEFAULT 'open_stock',
    "widthUm" INTEGER NOT NULL,
    "heightUm" INTEGER NOT NULL,
    "depthUm" INTEGER,
    "weightG" INTEGER,
    "priceCents" BIGINT NOT NULL,
    "costCents" BIGINT,
    "gtin" TEXT,
    "pictureId" UUID,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Sku_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Collector" (
    "id" UUID NOT NULL,
    "kind" "CollectorKind" NOT NULL DEFAULT 'person',
    "name" TEXT NOT NULL,
    "email" TEXT,
    "phone" TEXT,
    "street" TEXT,
    "city" TEXT,
    "state" TEXT,
    "postcode" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Collector_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Commission" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "collectorId" UUID NOT NULL,
    "title" TEXT NOT NULL,
    "wish" TEXT NOT NULL DEFAULT '',
    "avoid" TEXT NOT NULL DEFAULT '',
    "colours" TEXT NOT NULL DEFAULT '',
    "exposure" "Exposure",
    "wall" "WallKind",
    "room" TEXT,
    "siteAddress" TEXT,
    "widthUm" INTEGER,
    "heightUm" INTEGER,
    "depthUm" INTEGER,
    "wishedOn" DATE,
    "budgetFromCents" BIGINT,
    "budgetToCents" BIGINT,
    "askedAt" TIMESTAMPTZ(3) NOT NULL,
    "askedOn" DATE NOT NULL,
    "takenById" UUID NOT NULL,

    CONSTRAINT "Commission_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CommissionPicture" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "fileId" UUID NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CommissionPicture_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Agreement" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "priceCents" BIGINT NOT NULL,
    "depositCents" BIGINT NOT NULL,
    "taxPlaceId" UUID NOT NULL,
    "promisedOn" DATE,
    "agreedOn" DATE NOT NULL,
    "agreedBy" TEXT NOT NULL,
    "recordedById" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Agreement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Sketch" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "letter" TEXT NOT NULL,
    "fileId" UUID NOT NULL,
    "fileSha256" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "shownOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Sketch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ColourTile" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "glazes" TEXT NOT NULL,
    "fileId" UUID NOT NULL,
    "fileSha256" TEXT NOT NULL,
    "shownOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ColourTile_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Approval" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "sketchId" UUID,
    "colourTileId" UUID,
    "fileSha256" TEXT NOT NULL,
    "approvedBy" TEXT NOT NULL,
    "how" "ApprovalHow" NOT NULL,
    "approvedOn" DATE NOT NULL,
    "recordedById" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Approval_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Instalment" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "askedOn" DATE NOT NULL,
    "dueOn" DATE NOT NULL,
    "askedById" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Instalment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CommissionPayment" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "commissionId" UUID NOT NULL,
    "instalmentId" UUID,
    "amountCents" BIGINT NOT NULL,
    "kind" "TenderKind" NOT NULL,
    "reference" TEXT NOT NULL DEFAULT '',
    "paidBy" TEXT NOT NULL,
    "receivedOn" DATE NOT NULL,
    "receivedAt" TIMESTAMPTZ(3) NOT NULL,
    "staffId" UUID NOT NULL,
    "entryId" UUID NOT NULL,

    CONSTRAINT "CommissionPayment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StartOverride" (
    "commissionId" UUID NOT NULL,
    "why" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "StartOverride_pkey" PRIMARY KEY ("commissionId")
);

-- CreateTable
CREATE TABLE "HandOver" (
    "commissionId" UUID NOT NULL,
    "saleId" UUID NOT NULL,
    "handedOn" DATE NOT NULL,
    "signedBy" TEXT NOT NULL,
    "recordedById" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "HandOver_pkey" PRIMARY KEY ("commissionId")
);

-- CreateTable
CREATE TABLE "CommissionEnding" (
    "commissionId" UUID NOT NULL,
    "why" TEXT NOT NULL,
    "endedOn" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CommissionEnding_pkey" PRIMARY KEY ("commissionId")
);

-- CreateTable
CREATE TABLE "StoredFile" (
    "id" UUID NOT NULL,
    "sha256" TEXT NOT NULL,
    "mediaType" TEXT NOT NULL,
    "byteLength" INTEGER NOT NULL,
    "widthPx" INTEGER,
    "heightPx" INTEGER,
    "bytes" BYTEA NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "StoredFile_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Appointment" (
    "id" UUID NOT NULL,
    "kind" "AppointmentKind" NOT NULL,
    "commissionId" UUID,
    "leadId" UUID NOT NULL,
    "startsAt" TIMESTAMPTZ(3) NOT NULL,
    "endsAt" TIMESTAMPTZ(3) NOT NULL,
    "address" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "bookedById" UUID NOT NULL,
    "bookedAt" TIMESTAMPTZ(3) NOT NULL,
    "sequence" INTEGER NOT NULL DEFAULT 0,
    "calledOffAt" TIMESTAMPTZ(3),
    "calledOffWhy" TEXT,

    CONSTRAINT "Appointment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Account" (
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "nature" "AccountNature" NOT NULL,

    CONSTRAINT "Account_pkey" PRIMARY KEY ("code")
);

-- CreateTable
CREATE TABLE "JournalEntry" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "on" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "memo" TEXT NOT NULL,
    "paper" TEXT NOT NULL,
    "paperId" UUID NOT NULL,
    "staffId" UUID,

    CONSTRAINT "JournalEntry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Posting" (
    "id" BIGSERIAL NOT NULL,
    "entryId" UUID NOT NULL,
    "accountCode" TEXT NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "authority" TEXT,
    "commissionId" UUID,

    CONSTRAINT "Posting_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Gallery" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "tagline" TEXT NOT NULL DEFAULT '',
    "street" TEXT NOT NULL DEFAULT '',
    "city" TEXT NOT NULL DEFAULT '',
    "state" TEXT NOT NULL DEFAULT '',
    "postcode" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "timeZone" TEXT NOT NULL,
    "currency" TEXT NOT NULL DEFAULT 'USD',
    "lengthUnit" TEXT NOT NULL DEFAULT 'in',
    "returnTerms" TEXT NOT NULL DEFAULT '',
    "roundTaxBy" TEXT NOT NULL DEFAULT 'invoice',
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "taxPlaceId" UUID NOT NULL,
    "counterId" UUID NOT NULL,

    CONSTRAINT "Gallery_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CommandKey" (
    "key" UUID NOT NULL,
    "command" TEXT NOT NULL,
    "staffId" UUID,
    "inputHash" TEXT NOT NULL,
    "answer" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CommandKey_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Sale" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "channel" "Channel" NOT NULL,
    "placeId" UUID NOT NULL,
    "taxPlaceId" UUID NOT NULL,
    "collectorId" UUID,
    "staffId" UUID NOT NULL,
    "soldAt" TIMESTAMPTZ(3) NOT NULL,
    "soldOn" DATE NOT NULL,
    "netCents" BIGINT NOT NULL,
    "taxCents" BIGINT NOT NULL,
    "totalCents" BIGINT NOT NULL,
    "entryId" UUID NOT NULL,

    CONSTRAINT "Sale_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SaleLine" (
    "id" UUID NOT NULL,
    "saleId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" "LineKind" NOT NULL,
    "skuId" UUID,
    "designId" UUID,
    "title" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "unitPriceCents" BIGINT NOT NULL,
    "netCents" BIGINT NOT NULL,
    "taxable" BOOLEAN NOT NULL,
    "taxCents" BIGINT NOT NULL,
    "unitCostCents" BIGINT,

    CONSTRAINT "SaleLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SaleTax" (
    "id" UUID NOT NULL,
    "saleId" UUID NOT NULL,
    "authority" TEXT NOT NULL,
    "ratePercent" DECIMAL(8,5) NOT NULL,
    "taxableCents" BIGINT NOT NULL,
    "taxCents" BIGINT NOT NULL,

    CONSTRAINT "SaleTax_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Tender" (
    "id" UUID NOT NULL,
    "saleId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" "TenderKind" NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "givenCents" BIGINT,
    "reference" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "Tender_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Place" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "Place_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockMovement" (
    "id" BIGSERIAL NOT NULL,
    "skuId" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "reason" "MovementReason" NOT NULL,
    "unitCostCents" BIGINT,
    "saleLineId" UUID,
    "stockListId" UUID,
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "StockMovement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockLevel" (
    "skuId" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "onHand" INTEGER NOT NULL,

    CONSTRAINT "StockLevel_pkey" PRIMARY KEY ("skuId","placeId")
);

-- CreateTable
CREATE TABLE "StockList" (
    "id" UUID NOT NULL,
    "fileId" UUID NOT NULL,
    "fileName" TEXT NOT NULL,
    "placeId" UUID NOT NULL,
    "newRows" INTEGER NOT NULL,
    "changedRows" INTEGER NOT NULL,
    "sameRows" INTEGER NOT NULL,
    "refusedRows" INTEGER NOT NULL,
    "planSha256" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "shownAt" TIMESTAMPTZ(3) NOT NULL,
    "confirmedAt" TIMESTAMPTZ(3),

    CONSTRAINT "StockList_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Job" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "title" TEXT NOT NULL,
    "technique" "Technique" NOT NULL,
    "commissionId" UUID,
    "skuId" UUID,
    "pieces" INTEGER NOT NULL,
    "neededOn" DATE,
    "openedById" UUID NOT NULL,
    "openedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "JobStep" (
    "jobId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "peg" TEXT NOT NULL,
    "shortestDays" INTEGER NOT NULL,
    "likelyDays" INTEGER NOT NULL,
    "longestDays" INTEGER NOT NULL,
    "caution" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "JobStep_pkey" PRIMARY KEY ("jobId","position")
);

-- CreateTable
CREATE TABLE "JobMove" (
    "id" BIGSERIAL NOT NULL,
    "jobId" UUID NOT NULL,
    "fromPosition" INTEGER NOT NULL,
    "toPosition" INTEGER NOT NULL,
    "pieces" INTEGER NOT NULL,
    "undoesId" BIGINT,
    "staffId" UUID NOT NULL,
    "movedOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "JobMove_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TaxPlace" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "state" TEXT NOT NULL,

    CONSTRAINT "TaxPlace_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TaxRate" (
    "id" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "authority" TEXT NOT NULL,
    "ratePercent" DECIMAL(8,5) NOT NULL,
    "fromOn" DATE NOT NULL,
    "untilOn" DATE,

    CONSTRAINT "TaxRate_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Staff_signInName_key" ON "Staff"("signInName");

-- CreateIndex
CREATE INDEX "StaffSession_staffId_idx" ON "StaffSession"("staffId");

-- CreateIndex
CREATE INDEX "SignInTry_signInName_at_idx" ON "SignInTry"("signInName", "at");

-- CreateIndex
CREATE INDEX "SignInTry_address_at_idx" ON "SignInTry"("address", "at");

-- CreateIndex
CREATE INDEX "AuditLine_subject_subjectId_idx" ON "AuditLine"("subject", "subjectId");

-- CreateIndex
CREATE INDEX "AuditLine_at_idx" ON "AuditLine"("at");

-- CreateIndex
CREATE UNIQUE INDEX "Design_code_key" ON "Design"("code");

-- CreateIndex
CREATE UNIQUE INDEX "Design_title_key" ON "Design"("title");

-- CreateIndex
CREATE INDEX "Design_title_letters" ON "Design" USING GIN ("title" gin_trgm_ops);

-- CreateIndex
CREATE UNIQUE INDEX "Colourway_name_key" ON "Colourway"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Sku_code_key" ON "Sku"("code");

-- CreateIndex
CREATE UNIQUE INDEX "Sku_gtin_key" ON "Sku"("gtin");

-- CreateIndex
CREATE INDEX "Sku_designId_idx" ON "Sku"("designId");

-- CreateIndex
CREATE INDEX "Collector_name_letters" ON "Collector" USING GIN ("name" gin_trgm_ops);

-- CreateIndex
CREATE UNIQUE INDEX "Commission_number_key" ON "Commission"("number");

-- CreateIndex
CREATE INDEX "Commission_collectorId_idx" ON "Commission"("collectorId");

-- CreateIndex
CREATE INDEX "CommissionPicture_commissionId_idx" ON "CommissionPicture"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "Agreement_commissionId_version_key" ON "Agreement"("commissionId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "Sketch_commissionId_letter_key" ON "Sketch"("commissionId", "letter");

-- CreateIndex
CREATE UNIQUE INDEX "Sketch_id_commissionId_fileSha256_key" ON "Sketch"("id", "commissionId", "fileSha256");

-- CreateIndex
CREATE UNIQUE INDEX "ColourTile_commissionId_number_key" ON "ColourTile"("commissionId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "ColourTile_id_commissionId_fileSha256_key" ON "ColourTile"("id", "commissionId", "fileSha256");

-- CreateIndex
CREATE INDEX "Approval_commissionId_idx" ON "Approval"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "Instalment_commissionId_position_key" ON "Instalment"("commissionId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "CommissionPayment_number_key" ON "CommissionPayment"("number");

-- CreateIndex
CREATE UNIQUE INDEX "CommissionPayment_entryId_key" ON "CommissionPayment"("entryId");

-- CreateIndex
CREATE INDEX "CommissionPayment_commissionId_idx" ON "CommissionPayment"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "HandOver_saleId_key" ON "HandOver"("saleId");

-- CreateIndex
CREATE UNIQUE INDEX "StoredFile_sha256_key" ON "StoredFile"("sha256");

-- CreateIndex
CREATE UNIQUE INDEX "StoredFile_id_sha256_key" ON "StoredFile"("id", "sha256");

-- CreateIndex
CREATE INDEX "Appointment_startsAt_idx" ON "Appointment"("startsAt");

-- CreateIndex
CREATE INDEX "Appointment_commissionId_idx" ON "Appointment"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "Account_name_key" ON "Account"("name");

-- CreateIndex
CREATE UNIQUE INDEX "JournalEntry_number_key" ON "JournalEntry"("number");

-- CreateIndex
CREATE INDEX "JournalEntry_on_idx" ON "JournalEntry"("on");

-- CreateIndex
CREATE INDEX "JournalEntry_paper_paperId_idx" ON "JournalEntry"("paper", "paperId");

-- CreateIndex
CREATE INDEX "Posting_entryId_idx" ON "Posting"("entryId");

-- CreateIndex
CREATE INDEX "Posting_accountCode_idx" ON "Posting"("accountCode");

-- CreateIndex
CREATE INDEX "Posting_commissionId_idx" ON "Posting"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "Sale_number_key" ON "Sale"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Sale_entryId_key" ON "Sale"("entryId");

-- CreateIndex
CREATE INDEX "Sale_soldOn_idx" ON "Sale"("soldOn");

-- CreateIndex
CREATE INDEX "Sale_collectorId_idx" ON "Sale"("collectorId");

-- CreateIndex
CREATE INDEX "SaleLine_designId_idx" ON "SaleLine"("designId");

-- CreateIndex
CREATE UNIQUE INDEX "SaleLine_saleId_position_key" ON "SaleLine"("saleId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "SaleTax_saleId_authority_key" ON "SaleTax"("saleId", "authority");

-- CreateIndex
CREATE UNIQUE INDEX "Tender_saleId_position_key" ON "Tender"("saleId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "Place_name_key" ON "Place"("name");

-- CreateIndex
CREATE INDEX "StockMovement_skuId_placeId_idx" ON "StockMovement"("skuId", "placeId");

-- CreateIndex
CREATE INDEX "StockMovement_saleLineId_idx" ON "StockMovement"("saleLineId");

-- CreateIndex
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");

-- CreateIndex
CREATE INDEX "Job_commissionId_idx" ON "Job"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "JobMove_undoesId_key" ON "JobMove"("undoesId");

-- CreateIndex
CREATE INDEX "JobMove_jobId_idx" ON "JobMove"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "TaxPlace_name_key" ON "TaxPlace"("name");

-- AddForeignKey
ALTER TABLE "StaffSession" ADD CONSTRAINT "StaffSession_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Design" ADD CONSTRAINT "Design_pictureId_fkey" FOREIGN KEY ("pictureId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Colourway" ADD CONSTRAINT "Colourway_pictureId_fkey" FOREIGN KEY ("pictureId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sku" ADD CONSTRAINT "Sku_designId_fkey" FOREIGN KEY ("designId") REFERENCES "Design"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sku" ADD CONSTRAINT "Sku_colourwayId_fkey" FOREIGN KEY ("colourwayId") REFERENCES "Colourway"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sku" ADD CONSTRAINT "Sku_pictureId_fkey" FOREIGN KEY ("pictureId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Commission" ADD CONSTRAINT "Commission_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Commission" ADD CONSTRAINT "Commission_takenById_fkey" FOREIGN KEY ("takenById") REFERENCES "Staff"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionPicture" ADD CONSTRAINT "CommissionPicture_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionPicture" ADD CONSTRAINT "CommissionPicture_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Agreement" ADD CONSTRAINT "Agreement_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Agreement" ADD CONSTRAINT "Agreement_taxPlaceId_fkey" FOREIGN KEY ("taxPlaceId") REFERENCES "TaxPlace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sketch" ADD CONSTRAINT "Sketch_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sketch" ADD CONSTRAINT "Sketch_fileId_fileSha256_fkey" FOREIGN KEY ("fileId", "fileSha256") REFERENCES "StoredFile"("id", "sha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTile" ADD CONSTRAINT "ColourTile_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTile" ADD CONSTRAINT "ColourTile_fileId_fileSha256_fkey" FOREIGN KEY ("fileId", "fileSha256") REFERENCES "StoredFile"("id", "sha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Approval" ADD CONSTRAINT "Approval_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Approval" ADD CONSTRAINT "Approval_sketchId_commissionId_fileSha256_fkey" FOREIGN KEY ("sketchId", "commissionId", "fileSha256") REFERENCES "Sketch"("id", "commissionId", "fileSha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Approval" ADD CONSTRAINT "Approval_colourTileId_commissionId_fileSha256_fkey" FOREIGN KEY ("colourTileId", "commissionId", "fileSha256") REFERENCES "ColourTile"("id", "commissionId", "fileSha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Instalment" ADD CONSTRAINT "Instalment_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionPayment" ADD CONSTRAINT "CommissionPayment_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionPayment" ADD CONSTRAINT "CommissionPayment_instalmentId_fkey" FOREIGN KEY ("instalmentId") REFERENCES "Instalment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionPayment" ADD CONSTRAINT "CommissionPayment_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StartOverride" ADD CONSTRAINT "StartOverride_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HandOver" ADD CONSTRAINT "HandOver_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HandOver" ADD CONSTRAINT "HandOver_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionEnding" ADD CONSTRAINT "CommissionEnding_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Appointment" ADD CONSTRAINT "Appointment_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Appointment" ADD CONSTRAINT "Appointment_leadId_fkey" FOREIGN KEY ("leadId") REFERENCES "Staff"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Posting" ADD CONSTRAINT "Posting_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Posting" ADD CONSTRAINT "Posting_accountCode_fkey" FOREIGN KEY ("accountCode") REFERENCES "Account"("code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Posting" ADD CONSTRAINT "Posting_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Gallery" ADD CONSTRAINT "Gallery_taxPlaceId_fkey" FOREIGN KEY ("taxPlaceId") REFERENCES "TaxPlace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Gallery" ADD CONSTRAINT "Gallery_counterId_fkey" FOREIGN KEY ("counterId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_taxPlaceId_fkey" FOREIGN KEY ("taxPlaceId") REFERENCES "TaxPlace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sale" ADD CONSTRAINT "Sale_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleLine" ADD CONSTRAINT "SaleLine_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleLine" ADD CONSTRAINT "SaleLine_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleLine" ADD CONSTRAINT "SaleLine_designId_fkey" FOREIGN KEY ("designId") REFERENCES "Design"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SaleTax" ADD CONSTRAINT "SaleTax_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tender" ADD CONSTRAINT "Tender_saleId_fkey" FOREIGN KEY ("saleId") REFERENCES "Sale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_saleLineId_fkey" FOREIGN KEY ("saleLineId") REFERENCES "SaleLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_stockListId_fkey" FOREIGN KEY ("stockListId") REFERENCES "StockList"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockLevel" ADD CONSTRAINT "StockLevel_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockLevel" ADD CONSTRAINT "StockLevel_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockList" ADD CONSTRAINT "StockList_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockList" ADD CONSTRAINT "StockList_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobStep" ADD CONSTRAINT "JobStep_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobMove" ADD CONSTRAINT "JobMove_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobMove" ADD CONSTRAINT "JobMove_undoesId_fkey" FOREIGN KEY ("undoesId") REFERENCES "JobMove"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TaxRate" ADD CONSTRAINT "TaxRate_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "TaxPlace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------
-- What must always be true, held here so that no program can get round it.
-- Each rule has a name; a trigger puts its name in brackets before its sentence.
-- ---------------------------------------------------------------------------------------------

-- Answered by another one, never changed: entries, movements, sales, approvals, audit lines.
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '[never_changed] A row of "%" is never changed or deleted; it is answered by another one.', TG_TABLE_NAME;
END $$;

DO $$
DECLARE kept text;
BEGIN
  FOREACH kept IN ARRAY ARRAY[
    'AuditLine', 'StoredFile', 'CommandKey', 'JournalEntry', 'Posting', 'StockMovement', 'Sale',
    'SaleLine', 'SaleTax', 'Tender', 'Agreement', 'Sketch', 'ColourTile', 'Approval', 'Instalment',
    'CommissionPayment', 'StartOverride', 'HandOver', 'CommissionEnding', 'CommissionPicture',
    'JobStep', 'JobMove'
  ] LOOP
    EXECUTE format('CREATE TRIGGER "%s_never_changed" BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', kept, kept);
    EXECUTE format('CREATE TRIGGER "%s_never_emptied" BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', kept, kept);
  END LOOP;
END $$;

-- The gallery is one row, in words we know.
ALTER TABLE "Gallery"
  ADD CONSTRAINT gallery_is_one_row CHECK (id = 1),
  ADD CONSTRAINT gallery_length_unit_is_known CHECK ("lengthUnit" IN ('in', 'mm')),
  ADD CONSTRAINT gallery_rounds_tax_by_a_known_basis CHECK ("roundTaxBy" IN ('invoice', 'item'));

ALTER TABLE "Staff"
  ADD CONSTRAINT sign_in_name_is_lower_case CHECK ("signInName" = lower("signInName") AND "signInName" <> ''),
  ADD CONSTRAINT staff_has_a_role CHECK (cardinality(roles) > 0),
  ADD CONSTRAINT password_is_argon2id CHECK ("passwordHash" LIKE '$argon2id$%');

-- A file is named by its bytes.
ALTER TABLE "StoredFile"
  ADD CONSTRAINT file_is_named_by_its_bytes CHECK (sha256 = encode(sha256(bytes), 'hex') AND "byteLength" = octet_length(bytes));

-- Sizes, weights and prices.
ALTER TABLE "Sku"
  ADD CONSTRAINT sku_code_is_upper_case CHECK (code ~ '^[A-Z0-9]+(-[A-Z0-9]+)*$' AND length(code) BETWEEN 3 AND 24),
  ADD CONSTRAINT sku_size_is_positive CHECK ("widthUm" > 0 AND "heightUm" > 0 AND coalesce("depthUm", 1) > 0 AND coalesce("weightG", 1) > 0),
  ADD CONSTRAINT sku_price_is_not_negative CHECK ("priceCents" >= 0 AND coalesce("costCents", 0) >= 0),
  ADD CONSTRAINT sku_gtin_is_digits CHECK (gtin ~ '^([0-9]{8}|[0-9]{12,14})$');

ALTER TABLE "TaxRate"
  ADD CONSTRAINT tax_rate_is_a_share CHECK ("ratePercent" >= 0 AND "ratePercent" < 100),
  ADD CONSTRAINT tax_rate_ends_after_it_begins CHECK ("untilOn" > "fromOn"),
  ADD CONSTRAINT one_tax_rate_at_a_time EXCLUDE USING gist
    ("placeId" WITH =, authority WITH =, daterange("fromOn", "untilOn") WITH &&);

-- Stock on hand is the sum of its movements, for every SKU and place, and never below zero.
ALTER TABLE "StockMovement" ADD CONSTRAINT movement_moves_something CHECK (quantity <> 0);
ALTER TABLE "StockLevel" ADD CONSTRAINT stock_never_below_zero CHECK ("onHand" >= 0);

CREATE FUNCTION movement_changes_level() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  -- The row is made at zero first: a proposed row below zero would be refused before it met the old one.
  INSERT INTO "StockLevel" ("skuId", "placeId", "onHand")
    SELECT DISTINCT "skuId", "placeId", 0 FROM arrived ORDER BY 1, 2
    ON CONFLICT DO NOTHING;
  UPDATE "StockLevel" level SET "onHand" = level."onHand" + change.quantity
    FROM (SELECT "skuId", "placeId", sum(quantity)::int AS quantity FROM arrived GROUP BY 1, 2) change
    WHERE level."skuId" = change."skuId" AND level."placeId" = change."placeId";
  RETURN NULL;
END $$;
CREATE TRIGGER movement_changes_level AFTER INSERT ON "StockMovement"
  REFERENCING NEW TABLE AS arrived FOR EACH STATEMENT EXECUTE FUNCTION movement_changes_level();

CREATE FUNCTION level_only_by_movement() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF pg_trigger_depth() < 2 THEN
    RAISE EXCEPTION '[level_only_by_movement] What is on hand changes only by a stock movement.';
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER level_only_by_movement BEFORE INSERT OR UPDATE OR DELETE OR TRUNCATE ON "StockLevel"
  FOR EACH STATEMENT EXECUTE FUNCTION level_only_by_movement();

-- Every journal entry has at least two postings, and they sum to zero when its transaction ends.
ALTER TABLE "Posting" ADD CONSTRAINT posting_is_not_zero CHECK ("amountCents" <> 0);

CREATE FUNCTION entry_balances() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE entry uuid; parts int; total numeric;
BEGIN
  entry := CASE TG_TABLE_NAME WHEN 'JournalEntry' THEN (to_jsonb(NEW) ->> 'id')::uuid ELSE (to_jsonb(NEW) ->> 'entryId')::uuid END;
  SELECT count(*), coalesce(sum("amountCents"), 0) INTO parts, total FROM "Posting" WHERE "entryId" = entry;
  IF parts < 2 OR total <> 0 THEN
    RAISE EXCEPTION '[entry_balances] The postings of entry % do not sum to zero: % in % postings.', entry, total, parts;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER entry_balances AFTER INSERT ON "JournalEntry"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION entry_balances();
CREATE CONSTRAINT TRIGGER posting_balances AFTER INSERT ON "Posting"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION entry_balances();

-- A sale adds up: its lines, its taxes and its tenders, and the pieces that left for it.
ALTER TABLE "SaleLine"
  ADD CONSTRAINT sale_line_has_pieces CHECK (quantity > 0),
  ADD CONSTRAINT sale_line_price_is_not_negative CHECK ("unitPriceCents" >= 0 AND "netCents" >= 0 AND "taxCents" >= 0),
  ADD CONSTRAINT sale_line_names_its_piece CHECK ((kind = 'piece') = ("skuId" IS NOT NULL));
ALTER TABLE "Tender"
  ADD CONSTRAINT tender_is_not_negative CHECK ("amountCents" >= 0),
  ADD CONSTRAINT cash_given_covers_its_amount CHECK ("givenCents" >= "amountCents");

CREATE FUNCTION sale_adds_up() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  this "Sale"; net numeric; tax numeric; by_authority numeric; paid numeric; unmoved int;
BEGIN
  SELECT * INTO this FROM "Sale" WHERE id =
    CASE TG_TABLE_NAME WHEN 'Sale' THEN (to_jsonb(NEW) ->> 'id')::uuid ELSE (to_jsonb(NEW) ->> 'saleId')::uuid END;
  SELECT coalesce(sum("netCents"), 0), coalesce(sum("taxCents"), 0) INTO net, tax FROM "SaleLine" WHERE "saleId" = this.id;
  SELECT coalesce(sum("taxCents"), 0) INTO by_authority FROM "SaleTax" WHERE "saleId" = this.id;
  SELECT coalesce(sum("amountCents"), 0) INTO paid FROM "Tender" WHERE "saleId" = this.id;
  SELECT count(*) INTO unmoved FROM "SaleLine" line WHERE line."saleId" = this.id AND line.kind = 'piece'
    AND line.quantity <> coalesce((SELECT -sum(m.quantity) FROM "StockMovement" m WHERE m."saleLineId" = line.id AND m.reason = 'sold'), 0);
  IF net <> this."netCents" OR tax <> this."taxCents" OR by_authority <> tax
     OR net + tax <> this."totalCents" OR paid <> this."totalCents" OR unmoved > 0
     OR NOT EXISTS (SELECT 1 FROM "SaleLine" WHERE "saleId" = this.id) THEN
    RAISE EXCEPTION '[sale_adds_up] Sale % does not add up: lines %, tax % (% by authority), total %, paid %, % lines without their pieces.',
      this.number, net, tax, by_authority, this."totalCents", paid, unmoved;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER sale_adds_up AFTER INSERT ON "Sale"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION sale_adds_up();
CREATE CONSTRAINT TRIGGER sale_line_adds_up AFTER INSERT ON "SaleLine"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION sale_adds_up();
CREATE CONSTRAINT TRIGGER sale_tax_adds_up AFTER INSERT ON "SaleTax"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION sale_adds_up();
CREATE CONSTRAINT TRIGGER tender_adds_up AFTER INSERT ON "Tender"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION sale_adds_up();

-- Commissions.
ALTER TABLE "Commission"
  ADD CONSTRAINT commission_size_is_positive CHECK (coalesce("widthUm", 1) > 0 AND coalesce("heightUm", 1) > 0 AND coalesce("depthUm", 1) > 0),
  ADD CONSTRAINT commission_budget_goes_up CHECK (coalesce("budgetFromCents", 0) >= 0 AND "budgetToCents" >= coalesce("budgetFromCents", 0));
ALTER TABLE "Agreement"
  ADD CONSTRAINT agreement_price_is_positive CHECK ("priceCents" > 0 AND "depositCents" >= 0);
ALTER TABLE "Approval"
  ADD CONSTRAINT approval_is_of_one_thing CHECK (num_nonnulls("sketchId", "colourTileId") = 1);
ALTER TABLE "Instalment" ADD CONSTRAINT instalment_is_positive CHECK ("amountCents" > 0);
ALTER TABLE "CommissionPayment"
  ADD CONSTRAINT payment_is_positive CHECK ("amountCents" > 0),
  ADD CONSTRAINT payment_is_money CHECK (kind NOT IN ('deposit', 'on_account'));
ALTER TABLE "StartOverride" ADD CONSTRAINT start_override_says_why CHECK (length(trim(why)) >= 3);
ALTER TABLE "CommissionEnding" ADD CONSTRAINT ending_says_why CHECK (length(trim(why)) >= 3);

-- Jobs: pieces leave only a step at which they stand, and nobody begins a commission too early.
ALTER TABLE "Job" ADD CONSTRAINT job_has_pieces CHECK (pieces > 0);
ALTER TABLE "JobStep"
  ADD CONSTRAINT step_position_counts_from_one CHECK (position >= 1),
  ADD CONSTRAINT step_days_are_in_order CHECK ("shortestDays" >= 0 AND "likelyDays" >= "shortestDays" AND "longestDays" >= "likelyDays");
ALTER TABLE "JobMove"
  ADD CONSTRAINT move_has_pieces CHECK (pieces > 0),
  ADD CONSTRAINT move_goes_somewhere CHECK ("fromPosition" >= 0 AND "toPosition" >= 0 AND "fromPosition" <> "toPosition");

CREATE FUNCTION move_is_possible() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE job "Job"; standing int; last_step int;
BEGIN
  SELECT * INTO job FROM "Job" WHERE id = NEW."jobId" FOR UPDATE;
  SELECT coalesce(max(position), 0) INTO last_step FROM "JobStep" WHERE "jobId" = job.id;
  SELECT CASE WHEN NEW."fromPosition" = 0 THEN job.pieces ELSE 0 END
    + coalesce(sum(CASE WHEN "toPosition" = NEW."fromPosition" THEN pieces ELSE 0 END), 0)
    - coalesce(sum(CASE WHEN "fromPosition" = NEW."fromPosition" THEN pieces ELSE 0 END), 0)
    INTO standing FROM "JobMove" WHERE "jobId" = job.id;
  IF NEW.pieces > standing OR NEW."toPosition" > last_step + 1 THEN
    RAISE EXCEPTION '[pieces_leave_where_they_stand] Job %: % pieces cannot leave step % where % stand.', job.number, NEW.pieces, NEW."fromPosition", standing;
  END IF;
  IF NEW."fromPosition" = 0 AND job."commissionId" IS NOT NULL AND NOT making_may_begin(job."commissionId") THEN
    RAISE EXCEPTION '[making_begins_after_the_yes] Job %: agreement, sketch, colours and deposit come before the clay.', job.number;
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION making_may_begin(commission uuid) RETURNS boolean LANGUAGE sql STABLE AS $$
  SELECT NOT EXISTS (SELECT 1 FROM "CommissionEnding" WHERE "commissionId" = commission)
    AND (EXISTS (SELECT 1 FROM "StartOverride" WHERE "commissionId" = commission)
    OR (EXISTS (SELECT 1 FROM "Approval" WHERE "commissionId" = commission AND "sketchId" IS NOT NULL)
    AND EXISTS (SELECT 1 FROM "Approval" WHERE "commissionId" = commission AND "colourTileId" IS NOT NULL)
    -- Without an agreement the comparison is neither true nor false; that must not let anybody begin.
    AND coalesce(coalesce((SELECT sum("amountCents") FROM "CommissionPayment" WHERE "commissionId" = commission), 0)
      >= (SELECT "depositCents" FROM "Agreement" WHERE "commissionId" = commission ORDER BY version DESC LIMIT 1), false)))
$$;
CREATE TRIGGER move_is_possible BEFORE INSERT ON "JobMove" FOR EACH ROW EXECUTE FUNCTION move_is_possible();

-- Whoever leads an appointment is in one place at a time.
ALTER TABLE "Appointment"
  ADD CONSTRAINT appointment_ends_after_it_starts CHECK ("endsAt" > "startsAt"),
  ADD CONSTRAINT lead_is_in_one_place EXCLUDE USING gist
    ("leadId" WITH =, tstzrange("startsAt", "endsAt") WITH &&) WHERE ("calledOffAt" IS NULL);

-- The accounts that every gallery here begins with.
INSERT INTO "Account" (code, name, nature) VALUES
  ('1000', 'Cash drawer', 'asset'),
  ('1010', 'Card clearing', 'asset'),
  ('1020', 'Cheques to bank', 'asset'),
  ('1030', 'Bank', 'asset'),
  ('1100', 'Owed by collectors', 'asset'),
  ('2000', 'Collectors'' deposits', 'liability'),
  ('2100', 'Sales tax held', 'liability'),
  ('4000', 'Sales of pieces', 'income'),
  ('4010', 'Commissions handed over', 'income');
