-- CreateEnum
CREATE TYPE "SignedWhere" AS ENUM ('gallery', 'by_mail', 'on_their_page', 'at_their_home', 'elsewhere');

-- CreateEnum
CREATE TYPE "CommissionLineKind" AS ENUM ('work', 'design_fee', 'frame', 'crate', 'freight', 'travel', 'installation');

-- CreateEnum
CREATE TYPE "PlanEvent" AS ENUM ('agreed', 'colours_approved', 'out_of_bisque', 'before_hand_over', 'hung');

-- CreateEnum
CREATE TYPE "ConsentFor" AS ENUM ('letter', 'email', 'text', 'call', 'pictures');

-- CreateEnum
CREATE TYPE "SunKind" AS ENUM ('none', 'some', 'full');

-- CreateEnum
CREATE TYPE "CommissionTaxAs" AS ENUM ('goods_hung', 'fixture', 'set_in_pieces');

-- CreateEnum
CREATE TYPE "EndStage" AS ENUM ('before_making', 'making', 'finished');

-- CreateEnum
CREATE TYPE "ClockKind" AS ENUM ('collector', 'gallery', 'studio', 'clay', 'kiln', 'installer', 'building');

-- CreateEnum
CREATE TYPE "ProgressKind" AS ENUM ('picture', 'note', 'weight', 'firing', 'glaze_batch', 'fixing');

-- CreateEnum
CREATE TYPE "Shade" AS ENUM ('light', 'middle', 'dark');

-- CreateEnum
CREATE TYPE "SignatureKind" AS ENUM ('typed', 'drawn', 'on_paper');

-- AlterEnum
ALTER TYPE "ApprovalHow" ADD VALUE 'on_their_page';

-- DropForeignKey
ALTER TABLE "Approval" DROP CONSTRAINT "Approval_colourTileId_commissionId_fileSha256_fkey";

-- DropForeignKey
ALTER TABLE "Approval" DROP CONSTRAINT "Approval_sketchId_commissionId_fileSha256_fkey";

-- DropIndex
DROP INDEX "ColourTile_id_commissionId_fileSha256_key";

-- DropIndex
DROP INDEX "Sketch_id_commissionId_fileSha256_key";

-- AlterTable
ALTER TABLE "Agreement" ADD COLUMN     "body" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "cancelFinishedPercent" DECIMAL(5,2) NOT NULL DEFAULT 100,
ADD COLUMN     "cancelMakingPercent" DECIMAL(5,2) NOT NULL DEFAULT 50,
ADD COLUMN     "cancelNotice" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "clayFromOn" DATE,
ADD COLUMN     "contentSha256" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "designFeeCents" BIGINT NOT NULL DEFAULT 0,
ADD COLUMN     "extraRoundCents" BIGINT NOT NULL DEFAULT 0,
ADD COLUMN     "proposalId" UUID,
ADD COLUMN     "roundsIncluded" INTEGER NOT NULL DEFAULT 2,
ADD COLUMN     "signatureId" UUID,
ADD COLUMN     "signedWhere" "SignedWhere",
ADD COLUMN     "taxAs" "CommissionTaxAs" NOT NULL DEFAULT 'goods_hung';

-- AlterTable
ALTER TABLE "Approval" ADD COLUMN     "contentSha256" TEXT,
ADD COLUMN     "light" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "signatureId" UUID,
ALTER COLUMN "recordedById" DROP NOT NULL;

-- AlterTable
ALTER TABLE "AuditLine" ADD COLUMN     "linkId" UUID;

-- AlterTable
ALTER TABLE "Collector" ADD COLUMN     "erasedAt" TIMESTAMPTZ(3),
ADD COLUMN     "firm" TEXT,
ADD COLUMN     "mergedIntoId" UUID;

-- AlterTable
ALTER TABLE "ColourTile" ADD COLUMN     "batchId" UUID,
ADD COLUMN     "bodyId" UUID,
ADD COLUMN     "coats" INTEGER,
ADD COLUMN     "cone" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "contentSha256" TEXT,
ADD COLUMN     "firing" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "keptAt" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Commission" ADD COLUMN     "access" TEXT,
ADD COLUMN     "bodyId" UUID,
ADD COLUMN     "broughtById" UUID,
ADD COLUMN     "broughtKnown" BOOLEAN,
ADD COLUMN     "broughtPercent" DECIMAL(5,2),
ADD COLUMN     "decides" TEXT,
ADD COLUMN     "forFood" BOOLEAN,
ADD COLUMN     "foundUs" TEXT,
ADD COLUMN     "freezes" BOOLEAN,
ADD COLUMN     "hangHeightUm" INTEGER,
ADD COLUMN     "isDeadline" BOOLEAN,
ADD COLUMN     "pays" TEXT,
ADD COLUMN     "sun" "SunKind",
ADD COLUMN     "taxAs" "CommissionTaxAs",
ADD COLUMN     "wallOwner" TEXT,
ADD COLUMN     "wishedWhy" TEXT;

-- AlterTable
ALTER TABLE "CommissionEnding" ADD COLUMN     "entryId" UUID,
ADD COLUMN     "fate" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "feeCents" BIGINT NOT NULL DEFAULT 0,
ADD COLUMN     "keptCents" BIGINT NOT NULL DEFAULT 0,
ADD COLUMN     "stage" "EndStage";

-- AlterTable
ALTER TABLE "Gallery" ADD COLUMN     "paperSize" TEXT NOT NULL DEFAULT 'letter';

-- AlterTable
ALTER TABLE "HandOver" ADD COLUMN     "evenIfOwed" TEXT,
ADD COLUMN     "remarks" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "signatureId" UUID;

-- AlterTable
ALTER TABLE "Instalment" ADD COLUMN     "number" SERIAL NOT NULL,
ADD COLUMN     "stepPosition" INTEGER;

-- AlterTable
ALTER TABLE "Sketch" ADD COLUMN     "contentSha256" TEXT,
ADD COLUMN     "scale" TEXT NOT NULL DEFAULT '';

-- What was shown before is named by its content too, as lib/commissions/rules/content.ts writes it:
-- each field by its length in bytes, a colon, itself and a comma.
CREATE FUNCTION content_field(field text) RETURNS text LANGUAGE sql IMMUTABLE AS $$
  SELECT octet_length(field) || ':' || field || ','
$$;
ALTER TABLE "Sketch" DISABLE TRIGGER "Sketch_never_changed";
UPDATE "Sketch" SET "contentSha256" = encode(sha256(convert_to(content_field('sketch') || content_field(letter)
  || content_field("fileSha256") || content_field(note) || content_field('') || content_field('0'), 'UTF8')), 'hex');
ALTER TABLE "Sketch" ENABLE TRIGGER "Sketch_never_changed";
ALTER TABLE "ColourTile" DISABLE TRIGGER "ColourTile_never_changed";
UPDATE "ColourTile" SET "contentSha256" = encode(sha256(convert_to(content_field('colour tile') || content_field(number::text)
  || content_field("fileSha256") || content_field(glazes) || content_field('') || content_field('') || content_field('')
  || content_field('') || content_field('0') || content_field('0'), 'UTF8')), 'hex');
ALTER TABLE "ColourTile" ENABLE TRIGGER "ColourTile_never_changed";
ALTER TABLE "Approval" DISABLE TRIGGER "Approval_never_changed";
UPDATE "Approval" SET "contentSha256" = coalesce(
  (SELECT "contentSha256" FROM "Sketch" WHERE id = "sketchId"),
  (SELECT "contentSha256" FROM "ColourTile" WHERE id = "colourTileId"));
ALTER TABLE "Approval" ENABLE TRIGGER "Approval_never_changed";
DROP FUNCTION content_field;
ALTER TABLE "Sketch" ALTER COLUMN "contentSha256" SET NOT NULL;
ALTER TABLE "ColourTile" ALTER COLUMN "contentSha256" SET NOT NULL;
ALTER TABLE "Approval" ALTER COLUMN "contentSha256" SET NOT NULL;

-- CreateTable
CREATE TABLE "AgreementLine" (
    "agreementId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" "CommissionLineKind" NOT NULL,
    "words" TEXT NOT NULL,
    "amountCents" BIGINT NOT NULL,

    CONSTRAINT "AgreementLine_pkey" PRIMARY KEY ("agreementId","position")
);

-- CreateTable
CREATE TABLE "AgreementStep" (
    "agreementId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "event" "PlanEvent" NOT NULL,
    "percent" DECIMAL(6,3),
    "amountCents" BIGINT NOT NULL,

    CONSTRAINT "AgreementStep_pkey" PRIMARY KEY ("agreementId","position")
);

-- CreateTable
CREATE TABLE "ChangeOrder" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "words" TEXT NOT NULL,
    "why" TEXT NOT NULL DEFAULT '',
    "askedBy" TEXT NOT NULL,
    "stage" TEXT NOT NULL DEFAULT '',
    "kind" "CommissionLineKind" NOT NULL DEFAULT 'work',
    "priceCents" BIGINT NOT NULL,
    "dueEvent" "PlanEvent",
    "promisedBefore" DATE,
    "promisedAfter" DATE,
    "changeAskedId" UUID,
    "body" TEXT NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "offeredById" UUID,
    "offeredOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ChangeOrder_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ChangeOrderSigned" (
    "changeOrderId" UUID NOT NULL,
    "signatureId" UUID NOT NULL,
    "signedOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ChangeOrderSigned_pkey" PRIMARY KEY ("changeOrderId")
);

-- CreateTable
CREATE TABLE "ChangeOrderWithdrawn" (
    "changeOrderId" UUID NOT NULL,
    "why" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ChangeOrderWithdrawn_pkey" PRIMARY KEY ("changeOrderId")
);

-- CreateTable
CREATE TABLE "CollectorLink" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "tokenSha256" TEXT NOT NULL,
    "forName" TEXT NOT NULL,
    "madeById" UUID NOT NULL,
    "madeAt" TIMESTAMPTZ(3) NOT NULL,
    "runsOutAt" TIMESTAMPTZ(3) NOT NULL,
    "withdrawnAt" TIMESTAMPTZ(3),
    "lastUsedAt" TIMESTAMPTZ(3),

    CONSTRAINT "CollectorLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MailSent" (
    "id" UUID NOT NULL,
    "commissionId" UUID,
    "toAddress" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "sentAt" TIMESTAMPTZ(3),
    "failure" TEXT,

    CONSTRAINT "MailSent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DayOffer" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "kind" "AppointmentKind" NOT NULL,
    "leadId" UUID NOT NULL,
    "address" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "offeredById" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawnAt" TIMESTAMPTZ(3),

    CONSTRAINT "DayOffer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DayOfferSlot" (
    "offerId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "startsAt" TIMESTAMPTZ(3) NOT NULL,
    "endsAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "DayOfferSlot_pkey" PRIMARY KEY ("offerId","position")
);

-- CreateTable
CREATE TABLE "DayOfferChosen" (
    "offerId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "appointmentId" UUID NOT NULL,
    "chosenBy" TEXT NOT NULL,
    "linkId" UUID,
    "recordedById" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "DayOfferChosen_pkey" PRIMARY KEY ("offerId")
);

-- CreateTable
CREATE TABLE "CollectorPerson" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "said" TEXT NOT NULL DEFAULT '',
    "part" TEXT NOT NULL DEFAULT '',
    "email" TEXT,
    "phone" TEXT,
    "reach" TEXT NOT NULL DEFAULT '',
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CollectorPerson_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CollectorAddress" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "label" TEXT NOT NULL,
    "street" TEXT NOT NULL,
    "city" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT '',
    "postcode" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CollectorAddress_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Consent" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "to" "ConsentFor" NOT NULL,
    "given" BOOLEAN NOT NULL,
    "how" TEXT NOT NULL,
    "saidOn" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Consent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CollectorNote" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "words" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CollectorNote_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OwnedPiece" (
    "id" UUID NOT NULL,
    "collectorId" UUID NOT NULL,
    "saleLineId" UUID,
    "commissionId" UUID,
    "title" TEXT NOT NULL,
    "addressId" UUID,
    "hangs" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "OwnedPiece_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CollectorMerge" (
    "id" UUID NOT NULL,
    "keptId" UUID NOT NULL,
    "goneId" UUID NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "undoneAt" TIMESTAMPTZ(3),

    CONSTRAINT "CollectorMerge_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "InstalmentWithdrawn" (
    "instalmentId" UUID NOT NULL,
    "why" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "InstalmentWithdrawn_pkey" PRIMARY KEY ("instalmentId")
);

-- CreateTable
CREATE TABLE "CommissionRefund" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "commissionId" UUID NOT NULL,
    "paymentId" UUID NOT NULL,
    "amountCents" BIGINT NOT NULL,
    "kind" "TenderKind" NOT NULL,
    "reference" TEXT NOT NULL DEFAULT '',
    "why" TEXT NOT NULL,
    "refundedOn" DATE NOT NULL,
    "refundedAt" TIMESTAMPTZ(3) NOT NULL,
    "staffId" UUID NOT NULL,
    "entryId" UUID NOT NULL,

    CONSTRAINT "CommissionRefund_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DelayNotice" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "fromOn" DATE NOT NULL,
    "toOn" DATE NOT NULL,
    "clock" "ClockKind" NOT NULL,
    "why" TEXT NOT NULL,
    "toldHow" TEXT NOT NULL,
    "toldOn" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "DelayNotice_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Progress" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "kind" "ProgressKind" NOT NULL,
    "words" TEXT NOT NULL,
    "on" DATE NOT NULL,
    "fileId" UUID,
    "weightG" INTEGER,
    "firing" TEXT NOT NULL DEFAULT '',
    "batchId" UUID,
    "shared" BOOLEAN NOT NULL DEFAULT false,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Progress_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Proposal" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "understanding" TEXT NOT NULL,
    "widthUm" INTEGER NOT NULL,
    "heightUm" INTEGER NOT NULL,
    "depthUm" INTEGER NOT NULL,
    "pieces" INTEGER NOT NULL,
    "weightG" INTEGER NOT NULL,
    "buildUp" JSONB NOT NULL,
    "areaCents" BIGINT NOT NULL,
    "costCents" BIGINT NOT NULL,
    "priceCents" BIGINT NOT NULL,
    "taxPlaceId" UUID NOT NULL,
    "taxAs" "CommissionTaxAs" NOT NULL,
    "designFeeCents" BIGINT NOT NULL DEFAULT 0,
    "designFeeCredited" BOOLEAN NOT NULL DEFAULT true,
    "roundsIncluded" INTEGER NOT NULL,
    "extraRoundCents" BIGINT NOT NULL,
    "readyFromOn" DATE,
    "readyToOn" DATE,
    "validUntilOn" DATE NOT NULL,
    "notIncluded" TEXT NOT NULL DEFAULT '',
    "terms" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "writtenById" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Proposal_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ProposalLine" (
    "proposalId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" "CommissionLineKind" NOT NULL,
    "words" TEXT NOT NULL,
    "amountCents" BIGINT NOT NULL,

    CONSTRAINT "ProposalLine_pkey" PRIMARY KEY ("proposalId","position")
);

-- CreateTable
CREATE TABLE "ProposalStep" (
    "proposalId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "event" "PlanEvent" NOT NULL,
    "percent" DECIMAL(6,3),
    "amountCents" BIGINT NOT NULL,

    CONSTRAINT "ProposalStep_pkey" PRIMARY KEY ("proposalId","position")
);

-- CreateTable
CREATE TABLE "ProposalSent" (
    "proposalId" UUID NOT NULL,
    "sentOn" DATE NOT NULL,
    "how" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ProposalSent_pkey" PRIMARY KEY ("proposalId")
);

-- CreateTable
CREATE TABLE "ProposalAnswer" (
    "proposalId" UUID NOT NULL,
    "accepted" BOOLEAN NOT NULL,
    "answeredBy" TEXT NOT NULL,
    "words" TEXT NOT NULL DEFAULT '',
    "answeredOn" DATE NOT NULL,
    "recordedById" UUID,
    "signatureId" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ProposalAnswer_pkey" PRIMARY KEY ("proposalId")
);

-- CreateTable
CREATE TABLE "CommissionTerms" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "basis" JSONB NOT NULL,
    "plan" JSONB NOT NULL,
    "designFeePercent" DECIMAL(5,2) NOT NULL DEFAULT 8,
    "designFeeCredited" BOOLEAN NOT NULL DEFAULT true,
    "roundsIncluded" INTEGER NOT NULL DEFAULT 2,
    "extraRoundCents" BIGINT NOT NULL DEFAULT 15000,
    "validDays" INTEGER NOT NULL DEFAULT 30,
    "terms" TEXT NOT NULL DEFAULT '',
    "notIncluded" TEXT NOT NULL DEFAULT '',
    "cancelMakingPercent" DECIMAL(5,2) NOT NULL DEFAULT 50,
    "cancelFinishedPercent" DECIMAL(5,2) NOT NULL DEFAULT 100,
    "colourLimit" DECIMAL(5,2) NOT NULL DEFAULT 3,
    "answerDays" INTEGER NOT NULL DEFAULT 10,

    CONSTRAINT "CommissionTerms_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SketchArea" (
    "sketchId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "xPermille" INTEGER NOT NULL,
    "yPermille" INTEGER NOT NULL,

    CONSTRAINT "SketchArea_pkey" PRIMARY KEY ("sketchId","position")
);

-- CreateTable
CREATE TABLE "ColourTileShade" (
    "tileId" UUID NOT NULL,
    "shade" "Shade" NOT NULL,
    "fileId" UUID,
    "lStar" DECIMAL(7,3),
    "aStar" DECIMAL(7,3),
    "bStar" DECIMAL(7,3),

    CONSTRAINT "ColourTileShade_pkey" PRIMARY KEY ("tileId","shade")
);

-- CreateTable
CREATE TABLE "ColourTileArea" (
    "tileId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "ColourTileArea_pkey" PRIMARY KEY ("tileId","position")
);

-- CreateTable
CREATE TABLE "ColourTileGiven" (
    "tileId" UUID NOT NULL,
    "givenOn" DATE NOT NULL,
    "how" TEXT NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ColourTileGiven_pkey" PRIMARY KEY ("tileId")
);

-- CreateTable
CREATE TABLE "FiredColour" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "tileId" UUID NOT NULL,
    "where" TEXT NOT NULL,
    "lStar" DECIMAL(7,3) NOT NULL,
    "aStar" DECIMAL(7,3) NOT NULL,
    "bStar" DECIMAL(7,3) NOT NULL,
    "deltaE" DECIMAL(7,3) NOT NULL,
    "nearest" "Shade" NOT NULL,
    "limitDeltaE" DECIMAL(7,3) NOT NULL,
    "firing" TEXT NOT NULL DEFAULT '',
    "measuredOn" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "FiredColour_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ClayBody" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "absorptionPercent" DECIMAL(5,2),
    "shrinkagePercent" DECIMAL(5,2),
    "densityGPerCm3" DECIMAL(4,2),
    "frostTested" BOOLEAN,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "ClayBody_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GlazeBatch" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "glaze" TEXT NOT NULL,
    "mixedOn" DATE NOT NULL,
    "weightG" INTEGER,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "GlazeBatch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GlazeReservation" (
    "id" UUID NOT NULL,
    "batchId" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "releasedAt" TIMESTAMPTZ(3),

    CONSTRAINT "GlazeReservation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Signature" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "kind" "SignatureKind" NOT NULL,
    "name" TEXT NOT NULL,
    "capacity" TEXT NOT NULL DEFAULT '',
    "fileId" UUID,
    "contentSha256" TEXT NOT NULL,
    "statement" TEXT NOT NULL DEFAULT '',
    "device" TEXT NOT NULL DEFAULT '',
    "linkId" UUID,
    "recordedById" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Signature_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ChangeAsked" (
    "id" UUID NOT NULL,
    "commissionId" UUID NOT NULL,
    "sketchId" UUID,
    "colourTileId" UUID,
    "contentSha256" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "askedBy" TEXT NOT NULL,
    "how" "ApprovalHow" NOT NULL,
    "askedOn" DATE NOT NULL,
    "round" INTEGER,
    "feeCents" BIGINT NOT NULL DEFAULT 0,
    "linkId" UUID,
    "recordedById" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ChangeAsked_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ChangeSpot" (
    "changeId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "xPermille" INTEGER NOT NULL,
    "yPermille" INTEGER NOT NULL,
    "words" TEXT NOT NULL,

    CONSTRAINT "ChangeSpot_pkey" PRIMARY KEY ("changeId","position")
);

-- CreateTable
CREATE TABLE "CommissionTaxRule" (
    "id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "taxAs" "CommissionTaxAs" NOT NULL,
    "treatment" "TaxTreatmentKind" NOT NULL,
    "owesOnMaterials" BOOLEAN NOT NULL DEFAULT false,
    "note" TEXT NOT NULL DEFAULT '',
    "fromOn" DATE NOT NULL,
    "untilOn" DATE,

    CONSTRAINT "CommissionTaxRule_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "ChangeOrder_changeAskedId_key" ON "ChangeOrder"("changeAskedId");

-- CreateIndex
CREATE UNIQUE INDEX "ChangeOrder_commissionId_number_key" ON "ChangeOrder"("commissionId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "ChangeOrderSigned_signatureId_key" ON "ChangeOrderSigned"("signatureId");

-- CreateIndex
CREATE UNIQUE INDEX "CollectorLink_tokenSha256_key" ON "CollectorLink"("tokenSha256");

-- CreateIndex
CREATE INDEX "CollectorLink_commissionId_idx" ON "CollectorLink"("commissionId");

-- CreateIndex
CREATE INDEX "MailSent_commissionId_idx" ON "MailSent"("commissionId");

-- CreateIndex
CREATE INDEX "DayOffer_commissionId_idx" ON "DayOffer"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "DayOfferChosen_appointmentId_key" ON "DayOfferChosen"("appointmentId");

-- CreateIndex
CREATE INDEX "CollectorPerson_collectorId_idx" ON "CollectorPerson"("collectorId");

-- CreateIndex
CREATE INDEX "CollectorAddress_collectorId_idx" ON "CollectorAddress"("collectorId");

-- CreateIndex
CREATE INDEX "Consent_collectorId_idx" ON "Consent"("collectorId");

-- CreateIndex
CREATE INDEX "CollectorNote_collectorId_idx" ON "CollectorNote"("collectorId");

-- CreateIndex
CREATE UNIQUE INDEX "OwnedPiece_saleLineId_key" ON "OwnedPiece"("saleLineId");

-- CreateIndex
CREATE UNIQUE INDEX "OwnedPiece_commissionId_key" ON "OwnedPiece"("commissionId");

-- CreateIndex
CREATE INDEX "OwnedPiece_collectorId_idx" ON "OwnedPiece"("collectorId");

-- CreateIndex
CREATE INDEX "CollectorMerge_keptId_idx" ON "CollectorMerge"("keptId");

-- CreateIndex
CREATE UNIQUE INDEX "CommissionRefund_number_key" ON "CommissionRefund"("number");

-- CreateIndex
CREATE UNIQUE INDEX "CommissionRefund_entryId_key" ON "CommissionRefund"("entryId");

-- CreateIndex
CREATE INDEX "CommissionRefund_commissionId_idx" ON "CommissionRefund"("commissionId");

-- CreateIndex
CREATE INDEX "CommissionRefund_paymentId_idx" ON "CommissionRefund"("paymentId");

-- CreateIndex
CREATE INDEX "DelayNotice_commissionId_idx" ON "DelayNotice"("commissionId");

-- CreateIndex
CREATE INDEX "Progress_commissionId_idx" ON "Progress"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "Proposal_commissionId_version_key" ON "Proposal"("commissionId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "ProposalAnswer_signatureId_key" ON "ProposalAnswer"("signatureId");

-- CreateIndex
CREATE INDEX "FiredColour_commissionId_idx" ON "FiredColour"("commissionId");

-- CreateIndex
CREATE UNIQUE INDEX "ClayBody_name_key" ON "ClayBody"("name");

-- CreateIndex
CREATE UNIQUE INDEX "GlazeBatch_number_key" ON "GlazeBatch"("number");

-- CreateIndex
CREATE INDEX "GlazeReservation_commissionId_idx" ON "GlazeReservation"("commissionId");

-- CreateIndex
CREATE INDEX "GlazeReservation_batchId_idx" ON "GlazeReservation"("batchId");

-- CreateIndex
CREATE INDEX "Signature_commissionId_idx" ON "Signature"("commissionId");

-- CreateIndex
CREATE INDEX "ChangeAsked_commissionId_idx" ON "ChangeAsked"("commissionId");

-- CreateIndex
CREATE INDEX "ChangeAsked_sketchId_idx" ON "ChangeAsked"("sketchId");

-- CreateIndex
CREATE INDEX "ChangeAsked_colourTileId_idx" ON "ChangeAsked"("colourTileId");

-- CreateIndex
CREATE UNIQUE INDEX "Agreement_proposalId_key" ON "Agreement"("proposalId");

-- CreateIndex
CREATE UNIQUE INDEX "Agreement_signatureId_key" ON "Agreement"("signatureId");

-- CreateIndex
CREATE UNIQUE INDEX "Approval_sketchId_key" ON "Approval"("sketchId");

-- CreateIndex
CREATE UNIQUE INDEX "Approval_colourTileId_key" ON "Approval"("colourTileId");

-- CreateIndex
CREATE UNIQUE INDEX "Approval_signatureId_key" ON "Approval"("signatureId");

-- CreateIndex
CREATE INDEX "Collector_mergedIntoId_idx" ON "Collector"("mergedIntoId");

-- CreateIndex
CREATE UNIQUE INDEX "ColourTile_id_commissionId_contentSha256_key" ON "ColourTile"("id", "commissionId", "contentSha256");

-- CreateIndex
CREATE UNIQUE INDEX "CommissionEnding_entryId_key" ON "CommissionEnding"("entryId");

-- CreateIndex
CREATE UNIQUE INDEX "HandOver_signatureId_key" ON "HandOver"("signatureId");

-- CreateIndex
CREATE UNIQUE INDEX "Instalment_number_key" ON "Instalment"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Sketch_id_commissionId_contentSha256_key" ON "Sketch"("id", "commissionId", "contentSha256");

-- AddForeignKey
ALTER TABLE "Agreement" ADD CONSTRAINT "Agreement_proposalId_fkey" FOREIGN KEY ("proposalId") REFERENCES "Proposal"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Agreement" ADD CONSTRAINT "Agreement_signatureId_fkey" FOREIGN KEY ("signatureId") REFERENCES "Signature"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AgreementLine" ADD CONSTRAINT "AgreementLine_agreementId_fkey" FOREIGN KEY ("agreementId") REFERENCES "Agreement"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AgreementStep" ADD CONSTRAINT "AgreementStep_agreementId_fkey" FOREIGN KEY ("agreementId") REFERENCES "Agreement"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeOrder" ADD CONSTRAINT "ChangeOrder_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeOrder" ADD CONSTRAINT "ChangeOrder_changeAskedId_fkey" FOREIGN KEY ("changeAskedId") REFERENCES "ChangeAsked"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeOrderSigned" ADD CONSTRAINT "ChangeOrderSigned_changeOrderId_fkey" FOREIGN KEY ("changeOrderId") REFERENCES "ChangeOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeOrderSigned" ADD CONSTRAINT "ChangeOrderSigned_signatureId_fkey" FOREIGN KEY ("signatureId") REFERENCES "Signature"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeOrderWithdrawn" ADD CONSTRAINT "ChangeOrderWithdrawn_changeOrderId_fkey" FOREIGN KEY ("changeOrderId") REFERENCES "ChangeOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CollectorLink" ADD CONSTRAINT "CollectorLink_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MailSent" ADD CONSTRAINT "MailSent_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayOffer" ADD CONSTRAINT "DayOffer_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayOffer" ADD CONSTRAINT "DayOffer_leadId_fkey" FOREIGN KEY ("leadId") REFERENCES "Staff"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayOfferSlot" ADD CONSTRAINT "DayOfferSlot_offerId_fkey" FOREIGN KEY ("offerId") REFERENCES "DayOffer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayOfferChosen" ADD CONSTRAINT "DayOfferChosen_offerId_fkey" FOREIGN KEY ("offerId") REFERENCES "DayOffer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayOfferChosen" ADD CONSTRAINT "DayOfferChosen_appointmentId_fkey" FOREIGN KEY ("appointmentId") REFERENCES "Appointment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayOfferChosen" ADD CONSTRAINT "DayOfferChosen_linkId_fkey" FOREIGN KEY ("linkId") REFERENCES "CollectorLink"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Collector" ADD CONSTRAINT "Collector_mergedIntoId_fkey" FOREIGN KEY ("mergedIntoId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CollectorPerson" ADD CONSTRAINT "CollectorPerson_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CollectorAddress" ADD CONSTRAINT "CollectorAddress_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Consent" ADD CONSTRAINT "Consent_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CollectorNote" ADD CONSTRAINT "CollectorNote_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OwnedPiece" ADD CONSTRAINT "OwnedPiece_collectorId_fkey" FOREIGN KEY ("collectorId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OwnedPiece" ADD CONSTRAINT "OwnedPiece_saleLineId_fkey" FOREIGN KEY ("saleLineId") REFERENCES "SaleLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OwnedPiece" ADD CONSTRAINT "OwnedPiece_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OwnedPiece" ADD CONSTRAINT "OwnedPiece_addressId_fkey" FOREIGN KEY ("addressId") REFERENCES "CollectorAddress"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CollectorMerge" ADD CONSTRAINT "CollectorMerge_keptId_fkey" FOREIGN KEY ("keptId") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "InstalmentWithdrawn" ADD CONSTRAINT "InstalmentWithdrawn_instalmentId_fkey" FOREIGN KEY ("instalmentId") REFERENCES "Instalment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionRefund" ADD CONSTRAINT "CommissionRefund_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionRefund" ADD CONSTRAINT "CommissionRefund_paymentId_fkey" FOREIGN KEY ("paymentId") REFERENCES "CommissionPayment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionRefund" ADD CONSTRAINT "CommissionRefund_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Commission" ADD CONSTRAINT "Commission_bodyId_fkey" FOREIGN KEY ("bodyId") REFERENCES "ClayBody"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Commission" ADD CONSTRAINT "Commission_broughtById_fkey" FOREIGN KEY ("broughtById") REFERENCES "Collector"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HandOver" ADD CONSTRAINT "HandOver_signatureId_fkey" FOREIGN KEY ("signatureId") REFERENCES "Signature"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommissionEnding" ADD CONSTRAINT "CommissionEnding_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "JournalEntry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DelayNotice" ADD CONSTRAINT "DelayNotice_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Progress" ADD CONSTRAINT "Progress_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Progress" ADD CONSTRAINT "Progress_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Progress" ADD CONSTRAINT "Progress_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "GlazeBatch"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proposal" ADD CONSTRAINT "Proposal_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proposal" ADD CONSTRAINT "Proposal_taxPlaceId_fkey" FOREIGN KEY ("taxPlaceId") REFERENCES "TaxPlace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ProposalLine" ADD CONSTRAINT "ProposalLine_proposalId_fkey" FOREIGN KEY ("proposalId") REFERENCES "Proposal"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ProposalStep" ADD CONSTRAINT "ProposalStep_proposalId_fkey" FOREIGN KEY ("proposalId") REFERENCES "Proposal"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ProposalSent" ADD CONSTRAINT "ProposalSent_proposalId_fkey" FOREIGN KEY ("proposalId") REFERENCES "Proposal"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ProposalAnswer" ADD CONSTRAINT "ProposalAnswer_proposalId_fkey" FOREIGN KEY ("proposalId") REFERENCES "Proposal"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ProposalAnswer" ADD CONSTRAINT "ProposalAnswer_signatureId_fkey" FOREIGN KEY ("signatureId") REFERENCES "Signature"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SketchArea" ADD CONSTRAINT "SketchArea_sketchId_fkey" FOREIGN KEY ("sketchId") REFERENCES "Sketch"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTile" ADD CONSTRAINT "ColourTile_bodyId_fkey" FOREIGN KEY ("bodyId") REFERENCES "ClayBody"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTile" ADD CONSTRAINT "ColourTile_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "GlazeBatch"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTileShade" ADD CONSTRAINT "ColourTileShade_tileId_fkey" FOREIGN KEY ("tileId") REFERENCES "ColourTile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTileShade" ADD CONSTRAINT "ColourTileShade_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTileArea" ADD CONSTRAINT "ColourTileArea_tileId_fkey" FOREIGN KEY ("tileId") REFERENCES "ColourTile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ColourTileGiven" ADD CONSTRAINT "ColourTileGiven_tileId_fkey" FOREIGN KEY ("tileId") REFERENCES "ColourTile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiredColour" ADD CONSTRAINT "FiredColour_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiredColour" ADD CONSTRAINT "FiredColour_tileId_fkey" FOREIGN KEY ("tileId") REFERENCES "ColourTile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeReservation" ADD CONSTRAINT "GlazeReservation_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "GlazeBatch"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeReservation" ADD CONSTRAINT "GlazeReservation_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Signature" ADD CONSTRAINT "Signature_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Signature" ADD CONSTRAINT "Signature_linkId_fkey" FOREIGN KEY ("linkId") REFERENCES "CollectorLink"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Approval" ADD CONSTRAINT "Approval_sketchId_commissionId_contentSha256_fkey" FOREIGN KEY ("sketchId", "commissionId", "contentSha256") REFERENCES "Sketch"("id", "commissionId", "contentSha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Approval" ADD CONSTRAINT "Approval_colourTileId_commissionId_contentSha256_fkey" FOREIGN KEY ("colourTileId", "commissionId", "contentSha256") REFERENCES "ColourTile"("id", "commissionId", "contentSha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Approval" ADD CONSTRAINT "Approval_signatureId_fkey" FOREIGN KEY ("signatureId") REFERENCES "Signature"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeAsked" ADD CONSTRAINT "ChangeAsked_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeAsked" ADD CONSTRAINT "ChangeAsked_sketchId_commissionId_contentSha256_fkey" FOREIGN KEY ("sketchId", "commissionId", "contentSha256") REFERENCES "Sketch"("id", "commissionId", "contentSha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeAsked" ADD CONSTRAINT "ChangeAsked_colourTileId_commissionId_contentSha256_fkey" FOREIGN KEY ("colourTileId", "commissionId", "contentSha256") REFERENCES "ColourTile"("id", "commissionId", "contentSha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeAsked" ADD CONSTRAINT "ChangeAsked_linkId_fkey" FOREIGN KEY ("linkId") REFERENCES "CollectorLink"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChangeSpot" ADD CONSTRAINT "ChangeSpot_changeId_fkey" FOREIGN KEY ("changeId") REFERENCES "ChangeAsked"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------
-- What must always be true, held here so that no program can get round it.
-- Values that this migration adds to an enum are compared as text: PostgreSQL lets nobody use
-- them before the transaction that added them has ended.
-- ---------------------------------------------------------------------------------------------

-- Answered by another one, never changed.
DO $$
DECLARE kept text;
BEGIN
  FOREACH kept IN ARRAY ARRAY[
    'Proposal', 'ProposalLine', 'ProposalStep', 'ProposalSent', 'ProposalAnswer', 'AgreementLine',
    'AgreementStep', 'ChangeOrder', 'ChangeOrderSigned', 'ChangeOrderWithdrawn', 'Signature',
    'SketchArea', 'ColourTileShade', 'ColourTileArea', 'ColourTileGiven', 'FiredColour',
    'ChangeAsked', 'ChangeSpot', 'CommissionRefund', 'InstalmentWithdrawn', 'DelayNotice',
    'DayOfferSlot', 'DayOfferChosen', 'Consent'
  ] LOOP
    EXECUTE format('CREATE TRIGGER "%s_never_changed" BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', kept, kept);
    EXECUTE format('CREATE TRIGGER "%s_never_emptied" BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', kept, kept);
  END LOOP;
END $$;

ALTER TABLE "Gallery" ADD CONSTRAINT gallery_paper_is_known CHECK ("paperSize" IN ('letter', 'a4'));
ALTER TABLE "CommissionTerms"
  ADD CONSTRAINT commission_terms_are_one_row CHECK (id = 1),
  ADD CONSTRAINT commission_terms_are_shares CHECK (
    "designFeePercent" BETWEEN 0 AND 100 AND "cancelMakingPercent" BETWEEN 0 AND 100
    AND "cancelFinishedPercent" BETWEEN 0 AND 100 AND "roundsIncluded" >= 0 AND "extraRoundCents" >= 0
    AND "validDays" > 0 AND "answerDays" > 0 AND "colourLimit" > 0);

ALTER TABLE "Commission"
  ADD CONSTRAINT commission_height_is_positive CHECK (coalesce("hangHeightUm", 1) > 0),
  ADD CONSTRAINT referral_share_is_a_share CHECK (coalesce("broughtPercent", 0) BETWEEN 0 AND 100);
ALTER TABLE "ClayBody" ADD CONSTRAINT clay_body_is_measured CHECK (
  coalesce("absorptionPercent", 0) BETWEEN 0 AND 40 AND coalesce("shrinkagePercent", 0) BETWEEN 0 AND 40
  AND coalesce("densityGPerCm3", 1) > 0);
CREATE UNIQUE INDEX "GlazeReservation_one_at_a_time" ON "GlazeReservation" ("batchId") WHERE "releasedAt" IS NULL;

-- A name stands under exactly those bytes, given on the collector's own page or before somebody here.
ALTER TABLE "Signature"
  ADD CONSTRAINT signature_is_given_somewhere CHECK (num_nonnulls("linkId", "recordedById") = 1),
  ADD CONSTRAINT signature_has_a_name CHECK (length(trim(name)) > 0 AND (kind <> 'drawn' OR "fileId" IS NOT NULL)),
  ADD CONSTRAINT signature_names_its_bytes CHECK ("contentSha256" ~ '^[0-9a-f]{64}$');
ALTER TABLE "Approval" ADD CONSTRAINT approval_is_told_by_someone CHECK (num_nonnulls("recordedById", "signatureId") >= 1);
ALTER TABLE "ProposalAnswer" ADD CONSTRAINT answer_is_told_by_someone CHECK (num_nonnulls("recordedById", "signatureId") >= 1);
ALTER TABLE "ChangeAsked"
  ADD CONSTRAINT change_is_of_one_thing CHECK (num_nonnulls("sketchId", "colourTileId") = 1),
  ADD CONSTRAINT change_is_told_by_someone CHECK (num_nonnulls("recordedById", "linkId") = 1),
  ADD CONSTRAINT change_fee_is_not_negative CHECK ("feeCents" >= 0 AND coalesce(round, 1) > 0);

CREATE FUNCTION signature_fits() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE signed text; wanted text;
BEGIN
  SELECT "contentSha256" INTO signed FROM "Signature" WHERE id = (to_jsonb(NEW) ->> 'signatureId')::uuid;
  wanted := CASE TG_TABLE_NAME
    WHEN 'ProposalAnswer' THEN (SELECT "contentSha256" FROM "Proposal" WHERE id = (to_jsonb(NEW) ->> 'proposalId')::uuid)
    WHEN 'ChangeOrderSigned' THEN (SELECT "contentSha256" FROM "ChangeOrder" WHERE id = (to_jsonb(NEW) ->> 'changeOrderId')::uuid)
    ELSE to_jsonb(NEW) ->> 'contentSha256' END;
  IF signed IS NOT NULL AND signed <> wanted THEN
    RAISE EXCEPTION '[signature_fits] The name stands under other words than these.';
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER signature_fits AFTER INSERT ON "Approval" FOR EACH ROW EXECUTE FUNCTION signature_fits();
CREATE TRIGGER signature_fits AFTER INSERT ON "ProposalAnswer" FOR EACH ROW EXECUTE FUNCTION signature_fits();
CREATE TRIGGER signature_fits AFTER INSERT ON "Agreement" FOR EACH ROW EXECUTE FUNCTION signature_fits();
CREATE TRIGGER signature_fits AFTER INSERT ON "ChangeOrderSigned" FOR EACH ROW EXECUTE FUNCTION signature_fits();

-- What was signed is named by its bytes.
ALTER TABLE "Proposal"
  ADD CONSTRAINT proposal_is_named_by_its_words CHECK ("contentSha256" = encode(sha256(convert_to(body, 'UTF8')), 'hex')),
  ADD CONSTRAINT proposal_price_is_positive CHECK ("priceCents" > 0 AND "designFeeCents" >= 0 AND "extraRoundCents" >= 0 AND "roundsIncluded" >= 0),
  ADD CONSTRAINT proposal_has_a_size CHECK ("widthUm" > 0 AND "heightUm" > 0 AND "depthUm" > 0 AND pieces > 0 AND "weightG" >= 0);
ALTER TABLE "Agreement"
  ADD CONSTRAINT agreement_is_named_by_its_words CHECK (body = '' OR "contentSha256" = encode(sha256(convert_to(body, 'UTF8')), 'hex')),
  ADD CONSTRAINT agreement_shares_are_shares CHECK (
    "designFeeCents" >= 0 AND "cancelMakingPercent" BETWEEN 0 AND 100 AND "cancelFinishedPercent" BETWEEN 0 AND 100);
ALTER TABLE "ChangeOrder"
  ADD CONSTRAINT change_order_is_named_by_its_words CHECK ("contentSha256" = encode(sha256(convert_to(body, 'UTF8')), 'hex'));
ALTER TABLE "ProposalStep" ADD CONSTRAINT step_amount_is_not_negative CHECK ("amountCents" >= 0 AND coalesce(percent, 0) BETWEEN 0 AND 100);
ALTER TABLE "AgreementStep" ADD CONSTRAINT agreed_step_is_not_negative CHECK ("amountCents" >= 0 AND coalesce(percent, 0) BETWEEN 0 AND 100);

-- The lines that the collector sees come to the price.
CREATE FUNCTION lines_come_to_the_price() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE price bigint; lines numeric; many int;
BEGIN
  IF TG_TABLE_NAME IN ('Proposal', 'ProposalLine') THEN
    SELECT "priceCents" INTO price FROM "Proposal" WHERE id = coalesce((to_jsonb(NEW) ->> 'proposalId'), (to_jsonb(NEW) ->> 'id'))::uuid;
    SELECT coalesce(sum("amountCents"), 0), 1 INTO lines, many FROM "ProposalLine" WHERE "proposalId" = coalesce((to_jsonb(NEW) ->> 'proposalId'), (to_jsonb(NEW) ->> 'id'))::uuid;
  ELSE
    -- An agreement's own column proposalId is not its id.
    SELECT "priceCents" INTO price FROM "Agreement" WHERE id = coalesce((to_jsonb(NEW) ->> 'agreementId'), (to_jsonb(NEW) ->> 'id'))::uuid;
    SELECT coalesce(sum("amountCents"), 0), count(*) INTO lines, many FROM "AgreementLine" WHERE "agreementId" = coalesce((to_jsonb(NEW) ->> 'agreementId'), (to_jsonb(NEW) ->> 'id'))::uuid;
  END IF;
  IF many > 0 AND lines <> price THEN
    RAISE EXCEPTION '[lines_come_to_the_price] The lines come to % and the price is %.', lines, price;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER lines_come_to_the_price AFTER INSERT ON "Proposal"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION lines_come_to_the_price();
CREATE CONSTRAINT TRIGGER lines_come_to_the_price AFTER INSERT ON "ProposalLine"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION lines_come_to_the_price();
CREATE CONSTRAINT TRIGGER lines_come_to_the_price AFTER INSERT ON "Agreement"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION lines_come_to_the_price();
CREATE CONSTRAINT TRIGGER lines_come_to_the_price AFTER INSERT ON "AgreementLine"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION lines_come_to_the_price();

-- A change order is signed or withdrawn, never both; a yes ends the asking for changes.
CREATE FUNCTION change_order_has_one_end() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM 1 FROM "ChangeOrder" WHERE id = NEW."changeOrderId" FOR UPDATE;
  IF (TG_TABLE_NAME = 'ChangeOrderSigned' AND EXISTS (SELECT 1 FROM "ChangeOrderWithdrawn" WHERE "changeOrderId" = NEW."changeOrderId"))
     OR (TG_TABLE_NAME = 'ChangeOrderWithdrawn' AND EXISTS (SELECT 1 FROM "ChangeOrderSigned" WHERE "changeOrderId" = NEW."changeOrderId")) THEN
    RAISE EXCEPTION '[change_order_has_one_end] A change order is signed or withdrawn, never both.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER change_order_has_one_end BEFORE INSERT ON "ChangeOrderSigned" FOR EACH ROW EXECUTE FUNCTION change_order_has_one_end();
CREATE TRIGGER change_order_has_one_end BEFORE INSERT ON "ChangeOrderWithdrawn" FOR EACH ROW EXECUTE FUNCTION change_order_has_one_end();

CREATE FUNCTION no_change_after_the_yes() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT 1 FROM "Approval" WHERE "sketchId" = NEW."sketchId" OR "colourTileId" = NEW."colourTileId") THEN
    RAISE EXCEPTION '[no_change_after_the_yes] It was approved already; what changes now is a change order.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER no_change_after_the_yes BEFORE INSERT ON "ChangeAsked" FOR EACH ROW EXECUTE FUNCTION no_change_after_the_yes();

-- A picture on a phone is not approval of a colour: the twin set is in their hands first.
CREATE FUNCTION colour_is_seen_in_the_hand() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW."colourTileId" IS NOT NULL AND NEW.how::text = 'on_their_page'
     AND NOT EXISTS (SELECT 1 FROM "ColourTileGiven" WHERE "tileId" = NEW."colourTileId") THEN
    RAISE EXCEPTION '[colour_is_seen_in_the_hand] The twin of the tile is not in the collector''s hands yet.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER colour_is_seen_in_the_hand BEFORE INSERT ON "Approval" FOR EACH ROW EXECUTE FUNCTION colour_is_seen_in_the_hand();

ALTER TABLE "SketchArea" ADD CONSTRAINT area_is_in_the_picture CHECK ("xPermille" BETWEEN 0 AND 1000 AND "yPermille" BETWEEN 0 AND 1000 AND length(trim(name)) > 0);
ALTER TABLE "ChangeSpot" ADD CONSTRAINT spot_is_in_the_picture CHECK ("xPermille" BETWEEN 0 AND 1000 AND "yPermille" BETWEEN 0 AND 1000);
ALTER TABLE "ColourTileShade" ADD CONSTRAINT shade_is_measured_whole CHECK (
  num_nonnulls("lStar", "aStar", "bStar") IN (0, 3) AND coalesce("lStar", 0) BETWEEN 0 AND 100
  AND coalesce("aStar", 0) BETWEEN -160 AND 160 AND coalesce("bStar", 0) BETWEEN -160 AND 160);
ALTER TABLE "FiredColour" ADD CONSTRAINT fired_colour_is_measured CHECK (
  "lStar" BETWEEN 0 AND 100 AND "aStar" BETWEEN -160 AND 160 AND "bStar" BETWEEN -160 AND 160 AND "deltaE" >= 0 AND "limitDeltaE" > 0);
ALTER TABLE "DelayNotice" ADD CONSTRAINT delay_says_why CHECK (length(trim(why)) >= 3 AND "fromOn" <> "toOn");
ALTER TABLE "DayOfferSlot" ADD CONSTRAINT slot_ends_after_it_starts CHECK ("endsAt" > "startsAt");

-- Of what was written down for the evidence only whether the collector sees it may change.
CREATE FUNCTION progress_stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR to_jsonb(NEW) - 'shared' <> to_jsonb(OLD) - 'shared' THEN
    RAISE EXCEPTION '[progress_stays] What was written down of the making stays as it was.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER progress_stays BEFORE UPDATE OR DELETE ON "Progress" FOR EACH ROW EXECUTE FUNCTION progress_stays();
ALTER TABLE "Progress" ADD CONSTRAINT progress_says_something CHECK (
  (length(trim(words)) > 0 OR "fileId" IS NOT NULL OR "weightG" IS NOT NULL) AND coalesce("weightG", 1) > 0);

-- A link that was withdrawn or has run out does not come to life again.
ALTER TABLE "CollectorLink"
  ADD CONSTRAINT link_runs_out CHECK ("runsOutAt" > "madeAt"),
  ADD CONSTRAINT link_keeps_no_secret CHECK ("tokenSha256" ~ '^[0-9a-f]{64}$');
CREATE FUNCTION link_stays_shut() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF to_jsonb(NEW) - 'withdrawnAt' - 'lastUsedAt' <> to_jsonb(OLD) - 'withdrawnAt' - 'lastUsedAt'
     OR (OLD."withdrawnAt" IS NOT NULL AND NEW."withdrawnAt" IS DISTINCT FROM OLD."withdrawnAt") THEN
    RAISE EXCEPTION '[link_stays_shut] A link is withdrawn for good; make another one.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER link_stays_shut BEFORE UPDATE ON "CollectorLink" FOR EACH ROW EXECUTE FUNCTION link_stays_shut();

-- No more goes back than came in, and no collector's deposit is used twice.
ALTER TABLE "CommissionRefund"
  ADD CONSTRAINT commission_refund_is_money CHECK ("amountCents" > 0 AND length(trim(why)) >= 3 AND kind::text IN ('cash', 'card', 'cheque', 'bank_transfer'));
CREATE FUNCTION refund_at_most_paid() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE paid "CommissionPayment"; back numeric;
BEGIN
  SELECT * INTO paid FROM "CommissionPayment" WHERE id = NEW."paymentId" FOR UPDATE;
  SELECT coalesce(sum("amountCents"), 0) INTO back FROM "CommissionRefund" WHERE "paymentId" = NEW."paymentId";
  IF back + NEW."amountCents" > paid."amountCents" OR paid."commissionId" <> NEW."commissionId" THEN
    RAISE EXCEPTION '[refund_at_most_paid] Payment % was %, of which % went back already.', paid.number, paid."amountCents", back;
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER refund_at_most_paid BEFORE INSERT ON "CommissionRefund" FOR EACH ROW EXECUTE FUNCTION refund_at_most_paid();

CREATE FUNCTION deposit_used_once() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE held numeric;
BEGIN
  SELECT coalesce(sum("amountCents"), 0) INTO held FROM "Posting" WHERE "accountCode" = '2000' AND "commissionId" = NEW."commissionId";
  IF held > 0 THEN
    RAISE EXCEPTION '[deposit_used_once] % more would be used of the collector''s deposits than is held.', held;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER deposit_used_once AFTER INSERT ON "Posting"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW."accountCode" = '2000' AND NEW."commissionId" IS NOT NULL AND NEW."amountCents" > 0)
  EXECUTE FUNCTION deposit_used_once();
ALTER TABLE "CommissionEnding" ADD CONSTRAINT ending_keeps_at_most_its_fee CHECK ("feeCents" >= 0 AND "keptCents" BETWEEN 0 AND "feeCents");

-- Nobody is found to be the same as themselves, or as somebody who was merged before.
ALTER TABLE "Collector" ADD CONSTRAINT collector_is_not_merged_into_itself CHECK ("mergedIntoId" <> id);
CREATE FUNCTION merged_into_a_living_one() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW."mergedIntoId" IS NOT NULL AND (
       EXISTS (SELECT 1 FROM "Collector" WHERE id = NEW."mergedIntoId" AND "mergedIntoId" IS NOT NULL)
       OR EXISTS (SELECT 1 FROM "Collector" WHERE "mergedIntoId" = NEW.id)) THEN
    RAISE EXCEPTION '[merged_into_a_living_one] One is merged into a name that stands, and carries no other with it.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER merged_into_a_living_one BEFORE INSERT OR UPDATE OF "mergedIntoId" ON "Collector" FOR EACH ROW EXECUTE FUNCTION merged_into_a_living_one();

ALTER TABLE "CommissionTaxRule"
  ADD CONSTRAINT commission_rule_ends_after_it_begins CHECK ("untilOn" > "fromOn"),
  ADD CONSTRAINT one_commission_rule_at_a_time EXCLUDE USING gist
    (state WITH =, "taxAs" WITH =, daterange("fromOn", "untilOn") WITH &&);

-- Nobody begins a commission too early: the yes to the sketch and to every colour in it, the deposit
-- that is still there, and the days in which the collector may cancel are over.
DROP FUNCTION making_may_begin(uuid);
CREATE FUNCTION making_may_begin(commission uuid, today date) RETURNS boolean LANGUAGE sql STABLE AS $$
  WITH agreed AS (SELECT * FROM "Agreement" WHERE "commissionId" = commission ORDER BY version DESC LIMIT 1),
    sketch AS (SELECT "sketchId" FROM "Approval" WHERE "commissionId" = commission AND "sketchId" IS NOT NULL ORDER BY at DESC, id DESC LIMIT 1)
  SELECT NOT EXISTS (SELECT 1 FROM "CommissionEnding" WHERE "commissionId" = commission)
    AND NOT EXISTS (SELECT 1 FROM agreed WHERE "clayFromOn" > today)
    AND (EXISTS (SELECT 1 FROM "StartOverride" WHERE "commissionId" = commission)
    OR (EXISTS (SELECT 1 FROM sketch)
    AND EXISTS (SELECT 1 FROM "Approval" WHERE "commissionId" = commission AND "colourTileId" IS NOT NULL)
    AND NOT EXISTS (SELECT 1 FROM "SketchArea" area WHERE area."sketchId" = (SELECT "sketchId" FROM sketch)
      AND NOT EXISTS (SELECT 1 FROM "ColourTileArea" has JOIN "Approval" yes ON yes."colourTileId" = has."tileId"
        WHERE yes."commissionId" = commission AND lower(has.name) = lower(area.name)))
    -- Without an agreement the comparison is neither true nor false; that must not let anybody begin.
    AND coalesce(coalesce((SELECT sum("amountCents") FROM "CommissionPayment" WHERE "commissionId" = commission), 0)
      - coalesce((SELECT sum("amountCents") FROM "CommissionRefund" WHERE "commissionId" = commission), 0)
      >= (SELECT "depositCents" FROM agreed), false)))
$$;
CREATE OR REPLACE FUNCTION move_is_possible() RETURNS trigger LANGUAGE plpgsql AS $$
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
  IF NEW."fromPosition" = 0 AND job."commissionId" IS NOT NULL AND NOT making_may_begin(job."commissionId", NEW."movedOn") THEN
    RAISE EXCEPTION '[making_begins_after_the_yes] Job %: agreement, sketch, colours, deposit and the days to cancel come before the clay.', job.number;
  END IF;
  RETURN NEW;
END $$;

-- Usual terms to begin with; the owner keeps her own.
INSERT INTO "CommissionTerms" (id, basis, plan) VALUES (1, '{}', '[]');
