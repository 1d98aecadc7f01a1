-- CreateEnum
CREATE TYPE "MouldKind" AS ENUM ('model', 'master', 'working');

-- CreateEnum
CREATE TYPE "MouldFace" AS ENUM ('sharp', 'softening', 'worn', 'broken');

-- CreateEnum
CREATE TYPE "WareKind" AS ENUM ('flatware', 'small_hollowware', 'large_hollowware', 'cup_or_mug', 'pitcher');

-- CreateEnum
CREATE TYPE "KilnPart" AS ENUM ('elements', 'thermocouple', 'relays', 'shelves', 'other');

-- CreateEnum
CREATE TYPE "FiringOutcome" AS ENUM ('good', 'second', 'fire_again', 'lost');

-- CreateEnum
CREATE TYPE "StepKind" AS ENUM ('work', 'fire', 'dry', 'wait', 'collector');

-- CreateEnum
CREATE TYPE "LossCause" AS ENUM ('dried_too_fast', 'too_thick', 'joint', 'steam', 'kiln_over', 'kiln_under', 'glaze_fault', 'shelf', 'handling', 'wrong_size', 'wrong_colour', 'other');

-- CreateEnum
CREATE TYPE "ForetoldWhy" AS ENUM ('opened', 'begun', 'remade', 'asked');

-- AlterTable
ALTER TABLE "ClayBody" ADD COLUMN     "centsPerKg" DECIMAL(9,3);

-- AlterTable
ALTER TABLE "GlazeBatch" ADD COLUMN     "glazeId" UUID,
ADD COLUMN     "recipeId" UUID;

-- AlterTable
ALTER TABLE "Job" ADD COLUMN     "bodyId" UUID,
ADD COLUMN     "depthUm" INTEGER,
ADD COLUMN     "heightUm" INTEGER,
ADD COLUMN     "routeId" UUID,
ADD COLUMN     "wanted" INTEGER,
ADD COLUMN     "widthUm" INTEGER;

-- AlterTable
ALTER TABLE "JobMove" ADD COLUMN     "cause" "LossCause",
ADD COLUMN     "firingId" UUID,
ADD COLUMN     "makesGoodId" BIGINT,
ADD COLUMN     "note" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "JobStep" ADD COLUMN     "benchId" UUID,
ADD COLUMN     "cone" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "isTogether" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "kind" "StepKind",
ADD COLUMN     "lossPercent" DECIMAL(5,2) NOT NULL DEFAULT 0,
ADD COLUMN     "minutesEach" DECIMAL(7,2) NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Mould" ADD COLUMN     "fromId" UUID,
ADD COLUMN     "kind" "MouldKind" NOT NULL DEFAULT 'working',
ADD COLUMN     "slipMl" INTEGER;

-- CreateTable
CREATE TABLE "MouldLook" (
    "id" UUID NOT NULL,
    "mouldId" UUID NOT NULL,
    "face" "MouldFace" NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "lookedOn" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "MouldLook_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Glaze" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "cone" TEXT NOT NULL,
    "coats" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "rawFileId" UUID,
    "firedFileId" UUID,
    "lStar" DECIMAL(7,3),
    "aStar" DECIMAL(7,3),
    "bStar" DECIMAL(7,3),
    "endedOn" DATE,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Glaze_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GlazeRecipe" (
    "id" UUID NOT NULL,
    "glazeId" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "GlazeRecipe_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GlazeRecipeMaterial" (
    "recipeId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "material" TEXT NOT NULL,
    "percent" DECIMAL(6,3) NOT NULL,
    "isAddition" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "GlazeRecipeMaterial_pkey" PRIMARY KEY ("recipeId","position")
);

-- CreateTable
CREATE TABLE "GlazeProof" (
    "id" UUID NOT NULL,
    "glazeId" UUID NOT NULL,
    "recipeId" UUID NOT NULL,
    "testedOn" DATE NOT NULL,
    "laboratory" TEXT NOT NULL,
    "reportNumber" TEXT NOT NULL DEFAULT '',
    "ware" "WareKind" NOT NULL,
    "leadMgPerL" DECIMAL(8,4)[],
    "cadmiumMgPerL" DECIMAL(8,4)[],
    "isWithin" BOOLEAN NOT NULL,
    "fileId" UUID,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "GlazeProof_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TestTile" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "glazeId" UUID NOT NULL,
    "recipeId" UUID,
    "bodyId" UUID,
    "cone" TEXT NOT NULL,
    "coats" INTEGER NOT NULL,
    "firingId" UUID,
    "madeOn" DATE NOT NULL,
    "rawFileId" UUID,
    "firedFileId" UUID,
    "lStar" DECIMAL(7,3),
    "aStar" DECIMAL(7,3),
    "bStar" DECIMAL(7,3),
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "TestTile_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Kiln" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "insideHeightUm" INTEGER NOT NULL,
    "shelfWidthUm" INTEGER NOT NULL,
    "shelfDepthUm" INTEGER NOT NULL,
    "shelfThickUm" INTEGER NOT NULL,
    "shelves" INTEGER NOT NULL,
    "powerW" INTEGER NOT NULL,
    "centsPerKwh" DECIMAL(7,3) NOT NULL,
    "wearCents" BIGINT NOT NULL DEFAULT 0,
    "cones" TEXT[],
    "turnsAWeek" INTEGER NOT NULL DEFAULT 2,
    "leastFillPercent" INTEGER NOT NULL DEFAULT 70,
    "longestWaitDays" INTEGER NOT NULL DEFAULT 14,
    "openBelowC" INTEGER NOT NULL DEFAULT 93,
    "elementFirings" INTEGER NOT NULL DEFAULT 150,
    "retiredOn" DATE,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "Kiln_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "KilnCare" (
    "id" UUID NOT NULL,
    "kilnId" UUID NOT NULL,
    "part" "KilnPart" NOT NULL,
    "on" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "KilnCare_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Firing" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "kilnId" UUID NOT NULL,
    "cone" TEXT NOT NULL,
    "peg" TEXT NOT NULL,
    "isPlanned" BOOLEAN NOT NULL DEFAULT true,
    "schedule" JSONB NOT NULL,
    "plannedOn" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "madeById" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "calledOffAt" TIMESTAMPTZ(3),

    CONSTRAINT "Firing_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FiringLine" (
    "id" UUID NOT NULL,
    "firingId" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "pieces" INTEGER NOT NULL,
    "widthUm" INTEGER NOT NULL,
    "depthUm" INTEGER NOT NULL,
    "heightUm" INTEGER NOT NULL,
    "isAgain" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "FiringLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FiringLinePart" (
    "lineId" UUID NOT NULL,
    "partId" UUID NOT NULL,

    CONSTRAINT "FiringLinePart_pkey" PRIMARY KEY ("lineId","partId")
);

-- CreateTable
CREATE TABLE "FiringLit" (
    "firingId" UUID NOT NULL,
    "litOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "saidOfDry" TEXT NOT NULL DEFAULT '',
    "meterKwh" DECIMAL(12,3),
    "staffId" UUID NOT NULL,

    CONSTRAINT "FiringLit_pkey" PRIMARY KEY ("firingId")
);

-- CreateTable
CREATE TABLE "FiringReading" (
    "id" BIGSERIAL NOT NULL,
    "firingId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "celsius" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,

    CONSTRAINT "FiringReading_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FiringOpened" (
    "firingId" UUID NOT NULL,
    "openedOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "celsius" INTEGER NOT NULL,
    "meterKwh" DECIMAL(12,3),
    "wattHours" INTEGER NOT NULL,
    "isMetered" BOOLEAN NOT NULL,
    "costCents" BIGINT NOT NULL,
    "coneFell" TEXT NOT NULL DEFAULT '',
    "staffId" UUID NOT NULL,

    CONSTRAINT "FiringOpened_pkey" PRIMARY KEY ("firingId")
);

-- CreateTable
CREATE TABLE "FiringResult" (
    "id" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "outcome" "FiringOutcome" NOT NULL,
    "pieces" INTEGER NOT NULL,
    "cause" "LossCause",
    "note" TEXT NOT NULL DEFAULT '',
    "moveId" BIGINT,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "FiringResult_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PartMap" (
    "jobId" UUID NOT NULL,
    "fileId" UUID,
    "widthUm" INTEGER NOT NULL,
    "heightUm" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "drawnById" UUID NOT NULL,
    "drawnAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "PartMap_pkey" PRIMARY KEY ("jobId")
);

-- CreateTable
CREATE TABLE "PartShape" (
    "jobId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "outline" JSONB NOT NULL,
    "area" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "PartShape_pkey" PRIMARY KEY ("jobId","number")
);

-- CreateTable
CREATE TABLE "Part" (
    "id" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "make" INTEGER NOT NULL,
    "isSpare" BOOLEAN NOT NULL DEFAULT false,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Part_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PartMove" (
    "moveId" BIGINT NOT NULL,
    "partId" UUID NOT NULL,

    CONSTRAINT "PartMove_pkey" PRIMARY KEY ("moveId","partId")
);

-- CreateTable
CREATE TABLE "PartGlaze" (
    "id" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "batchId" UUID NOT NULL,
    "coats" INTEGER NOT NULL,
    "on" DATE NOT NULL,
    "staffId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "PartGlaze_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Bench" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "atOnce" INTEGER NOT NULL DEFAULT 1,
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Bench_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Route" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "technique" "Technique" NOT NULL,
    "isUsual" BOOLEAN NOT NULL DEFAULT false,
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Route_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RouteStep" (
    "routeId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "peg" TEXT NOT NULL,
    "kind" "StepKind" NOT NULL,
    "benchId" UUID,
    "cone" TEXT NOT NULL DEFAULT '',
    "shortestDays" INTEGER NOT NULL,
    "likelyDays" INTEGER NOT NULL,
    "longestDays" INTEGER NOT NULL,
    "isTogether" BOOLEAN NOT NULL DEFAULT false,
    "lossPercent" DECIMAL(5,2) NOT NULL DEFAULT 0,
    "minutesEach" DECIMAL(7,2) NOT NULL DEFAULT 0,
    "caution" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "RouteStep_pkey" PRIMARY KEY ("routeId","position")
);

-- CreateTable
CREATE TABLE "JobIntoStock" (
    "id" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "moveId" BIGINT NOT NULL,
    "skuId" UUID NOT NULL,
    "placeId" UUID NOT NULL,
    "pieces" INTEGER NOT NULL,
    "unitCostCents" BIGINT,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "JobIntoStock_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StudioSettings" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "closedWeekdays" INTEGER[],
    "dryingPercents" INTEGER[],
    "promiseInHundred" INTEGER NOT NULL DEFAULT 80,
    "startInHundred" DECIMAL(4,2) NOT NULL DEFAULT 95,
    "roomAroundUm" INTEGER NOT NULL DEFAULT 6350,
    "centsPerHour" BIGINT NOT NULL DEFAULT 0,
    "overheadPercent" DECIMAL(5,2) NOT NULL DEFAULT 0,
    "glazeCentsPerM2" BIGINT NOT NULL DEFAULT 0,
    "degrees" TEXT NOT NULL DEFAULT 'F',

    CONSTRAINT "StudioSettings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StudioClosed" (
    "id" UUID NOT NULL,
    "fromOn" DATE NOT NULL,
    "toOn" DATE NOT NULL,
    "why" TEXT NOT NULL DEFAULT '',
    "kilnId" UUID,
    "benchId" UUID,

    CONSTRAINT "StudioClosed_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Foretold" (
    "id" BIGSERIAL NOT NULL,
    "jobId" UUID,
    "commissionId" UUID,
    "why" "ForetoldWhy" NOT NULL,
    "toldOn" DATE NOT NULL,
    "in50On" DATE,
    "in80On" DATE,
    "in95On" DATE,
    "drives" JSONB NOT NULL,
    "futures" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Foretold_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "MouldLook_mouldId_idx" ON "MouldLook"("mouldId");

-- CreateIndex
CREATE UNIQUE INDEX "Glaze_name_key" ON "Glaze"("name");

-- CreateIndex
CREATE UNIQUE INDEX "GlazeRecipe_glazeId_version_key" ON "GlazeRecipe"("glazeId", "version");

-- CreateIndex
CREATE INDEX "GlazeProof_glazeId_idx" ON "GlazeProof"("glazeId");

-- CreateIndex
CREATE UNIQUE INDEX "TestTile_number_key" ON "TestTile"("number");

-- CreateIndex
CREATE INDEX "TestTile_glazeId_idx" ON "TestTile"("glazeId");

-- CreateIndex
CREATE UNIQUE INDEX "Kiln_name_key" ON "Kiln"("name");

-- CreateIndex
CREATE INDEX "KilnCare_kilnId_idx" ON "KilnCare"("kilnId");

-- CreateIndex
CREATE UNIQUE INDEX "Firing_number_key" ON "Firing"("number");

-- CreateIndex
CREATE INDEX "Firing_kilnId_idx" ON "Firing"("kilnId");

-- CreateIndex
CREATE INDEX "FiringLine_jobId_idx" ON "FiringLine"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "FiringLine_firingId_jobId_position_key" ON "FiringLine"("firingId", "jobId", "position");

-- CreateIndex
CREATE INDEX "FiringReading_firingId_idx" ON "FiringReading"("firingId");

-- CreateIndex
CREATE INDEX "FiringResult_lineId_idx" ON "FiringResult"("lineId");

-- CreateIndex
CREATE UNIQUE INDEX "Part_jobId_number_make_key" ON "Part"("jobId", "number", "make");

-- CreateIndex
CREATE INDEX "PartMove_partId_idx" ON "PartMove"("partId");

-- CreateIndex
CREATE INDEX "PartGlaze_partId_idx" ON "PartGlaze"("partId");

-- CreateIndex
CREATE UNIQUE INDEX "Bench_name_key" ON "Bench"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Route_name_key" ON "Route"("name");

-- CreateIndex
CREATE INDEX "JobIntoStock_jobId_idx" ON "JobIntoStock"("jobId");

-- CreateIndex
CREATE INDEX "Foretold_jobId_idx" ON "Foretold"("jobId");

-- CreateIndex
CREATE INDEX "Foretold_commissionId_idx" ON "Foretold"("commissionId");

-- CreateIndex
CREATE INDEX "Job_skuId_idx" ON "Job"("skuId");

-- CreateIndex
CREATE INDEX "JobMove_firingId_idx" ON "JobMove"("firingId");

-- AddForeignKey
ALTER TABLE "Mould" ADD CONSTRAINT "Mould_fromId_fkey" FOREIGN KEY ("fromId") REFERENCES "Mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MouldLook" ADD CONSTRAINT "MouldLook_mouldId_fkey" FOREIGN KEY ("mouldId") REFERENCES "Mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Glaze" ADD CONSTRAINT "Glaze_rawFileId_fkey" FOREIGN KEY ("rawFileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Glaze" ADD CONSTRAINT "Glaze_firedFileId_fkey" FOREIGN KEY ("firedFileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeRecipe" ADD CONSTRAINT "GlazeRecipe_glazeId_fkey" FOREIGN KEY ("glazeId") REFERENCES "Glaze"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeRecipeMaterial" ADD CONSTRAINT "GlazeRecipeMaterial_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "GlazeRecipe"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeProof" ADD CONSTRAINT "GlazeProof_glazeId_fkey" FOREIGN KEY ("glazeId") REFERENCES "Glaze"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeProof" ADD CONSTRAINT "GlazeProof_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "GlazeRecipe"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeProof" ADD CONSTRAINT "GlazeProof_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestTile" ADD CONSTRAINT "TestTile_glazeId_fkey" FOREIGN KEY ("glazeId") REFERENCES "Glaze"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestTile" ADD CONSTRAINT "TestTile_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "GlazeRecipe"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestTile" ADD CONSTRAINT "TestTile_bodyId_fkey" FOREIGN KEY ("bodyId") REFERENCES "ClayBody"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestTile" ADD CONSTRAINT "TestTile_firingId_fkey" FOREIGN KEY ("firingId") REFERENCES "Firing"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestTile" ADD CONSTRAINT "TestTile_rawFileId_fkey" FOREIGN KEY ("rawFileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestTile" ADD CONSTRAINT "TestTile_firedFileId_fkey" FOREIGN KEY ("firedFileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "KilnCare" ADD CONSTRAINT "KilnCare_kilnId_fkey" FOREIGN KEY ("kilnId") REFERENCES "Kiln"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Firing" ADD CONSTRAINT "Firing_kilnId_fkey" FOREIGN KEY ("kilnId") REFERENCES "Kiln"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringLine" ADD CONSTRAINT "FiringLine_firingId_fkey" FOREIGN KEY ("firingId") REFERENCES "Firing"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringLine" ADD CONSTRAINT "FiringLine_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringLinePart" ADD CONSTRAINT "FiringLinePart_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "FiringLine"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringLinePart" ADD CONSTRAINT "FiringLinePart_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringLit" ADD CONSTRAINT "FiringLit_firingId_fkey" FOREIGN KEY ("firingId") REFERENCES "Firing"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringReading" ADD CONSTRAINT "FiringReading_firingId_fkey" FOREIGN KEY ("firingId") REFERENCES "Firing"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringOpened" ADD CONSTRAINT "FiringOpened_firingId_fkey" FOREIGN KEY ("firingId") REFERENCES "Firing"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringResult" ADD CONSTRAINT "FiringResult_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "FiringLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FiringResult" ADD CONSTRAINT "FiringResult_moveId_fkey" FOREIGN KEY ("moveId") REFERENCES "JobMove"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartMap" ADD CONSTRAINT "PartMap_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartMap" ADD CONSTRAINT "PartMap_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartShape" ADD CONSTRAINT "PartShape_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Part" ADD CONSTRAINT "Part_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Part" ADD CONSTRAINT "Part_jobId_number_fkey" FOREIGN KEY ("jobId", "number") REFERENCES "PartShape"("jobId", "number") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartMove" ADD CONSTRAINT "PartMove_moveId_fkey" FOREIGN KEY ("moveId") REFERENCES "JobMove"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartMove" ADD CONSTRAINT "PartMove_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartGlaze" ADD CONSTRAINT "PartGlaze_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartGlaze" ADD CONSTRAINT "PartGlaze_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "GlazeBatch"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeBatch" ADD CONSTRAINT "GlazeBatch_glazeId_fkey" FOREIGN KEY ("glazeId") REFERENCES "Glaze"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GlazeBatch" ADD CONSTRAINT "GlazeBatch_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "GlazeRecipe"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RouteStep" ADD CONSTRAINT "RouteStep_routeId_fkey" FOREIGN KEY ("routeId") REFERENCES "Route"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RouteStep" ADD CONSTRAINT "RouteStep_benchId_fkey" FOREIGN KEY ("benchId") REFERENCES "Bench"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_routeId_fkey" FOREIGN KEY ("routeId") REFERENCES "Route"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_bodyId_fkey" FOREIGN KEY ("bodyId") REFERENCES "ClayBody"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobStep" ADD CONSTRAINT "JobStep_benchId_fkey" FOREIGN KEY ("benchId") REFERENCES "Bench"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobMove" ADD CONSTRAINT "JobMove_makesGoodId_fkey" FOREIGN KEY ("makesGoodId") REFERENCES "JobMove"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobMove" ADD CONSTRAINT "JobMove_firingId_fkey" FOREIGN KEY ("firingId") REFERENCES "Firing"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobIntoStock" ADD CONSTRAINT "JobIntoStock_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobIntoStock" ADD CONSTRAINT "JobIntoStock_moveId_fkey" FOREIGN KEY ("moveId") REFERENCES "JobMove"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobIntoStock" ADD CONSTRAINT "JobIntoStock_skuId_fkey" FOREIGN KEY ("skuId") REFERENCES "Sku"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobIntoStock" ADD CONSTRAINT "JobIntoStock_placeId_fkey" FOREIGN KEY ("placeId") REFERENCES "Place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StudioClosed" ADD CONSTRAINT "StudioClosed_kilnId_fkey" FOREIGN KEY ("kilnId") REFERENCES "Kiln"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StudioClosed" ADD CONSTRAINT "StudioClosed_benchId_fkey" FOREIGN KEY ("benchId") REFERENCES "Bench"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Foretold" ADD CONSTRAINT "Foretold_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Foretold" ADD CONSTRAINT "Foretold_commissionId_fkey" FOREIGN KEY ("commissionId") REFERENCES "Commission"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------
-- What was there before: jobs wanted all that they began with, and steps say what holds pieces.
-- ---------------------------------------------------------------------------------------------

UPDATE "Job" SET wanted = pieces;
ALTER TABLE "Job" ALTER COLUMN wanted SET NOT NULL;
INSERT INTO "StudioSettings" (id, "closedWeekdays", "dryingPercents")
  VALUES (1, '{7}', '{130,125,115,105,95,85,80,80,90,105,120,130}');
INSERT INTO "Bench" (id, name, "atOnce") VALUES
  (gen_random_uuid(), 'modelling bench', 2),
  (gen_random_uuid(), 'casting table', 2),
  (gen_random_uuid(), 'wheel', 1),
  (gen_random_uuid(), 'glazing bench', 2),
  (gen_random_uuid(), 'assembly table', 1);
UPDATE "JobStep" step SET
  kind = (CASE WHEN name LIKE 'the % kiln' THEN 'fire' WHEN name = 'drying' THEN 'dry'
    WHEN name = 'curing' THEN 'wait' ELSE 'work' END)::"StepKind",
  cone = CASE WHEN name = 'the bisque kiln' THEN '04' WHEN name LIKE 'the % kiln' THEN '6' ELSE '' END;
UPDATE "JobStep" SET "benchId" = (SELECT id FROM "Bench" WHERE name = CASE
    WHEN "JobStep".name = 'glazing' THEN 'glazing bench' WHEN "JobStep".name = 'casting' THEN 'casting table'
    WHEN "JobStep".name IN ('throwing', 'trimming') THEN 'wheel'
    WHEN "JobStep".peg IN ('assembled', 'finished') THEN 'assembly table' ELSE 'modelling bench' END)
  WHERE kind = 'work';
ALTER TABLE "JobStep" ALTER COLUMN kind SET NOT NULL;

-- ---------------------------------------------------------------------------------------------
-- What must always be true, held here so that no program can get round it.
-- ---------------------------------------------------------------------------------------------

DO $$
DECLARE kept text;
BEGIN
  FOREACH kept IN ARRAY ARRAY[
    'JobIntoStock', 'Foretold', 'KilnCare', 'FiringLit', 'FiringReading', 'FiringOpened', 'FiringResult',
    'PartMove', 'PartGlaze', 'GlazeRecipe', 'GlazeRecipeMaterial', 'GlazeProof', 'MouldLook'
  ] LOOP
    EXECUTE format('CREATE TRIGGER "%s_never_changed" BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', kept, kept);
    EXECUTE format('CREATE TRIGGER "%s_never_emptied" BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', kept, kept);
  END LOOP;
END $$;

ALTER TABLE "StudioSettings" ADD CONSTRAINT studio_settings_are_sound CHECK (
  id = 1 AND "closedWeekdays" <@ ARRAY[1,2,3,4,5,6,7] AND coalesce(cardinality("closedWeekdays"), 0) < 7
  AND cardinality("dryingPercents") = 12 AND 20 <= ALL ("dryingPercents") AND 400 >= ALL ("dryingPercents")
  AND "promiseInHundred" BETWEEN 50 AND 99 AND "startInHundred" > 0 AND "roomAroundUm" >= 0
  AND "centsPerHour" >= 0 AND "overheadPercent" >= 0 AND "glazeCentsPerM2" >= 0 AND degrees IN ('F', 'C'));
ALTER TABLE "StudioClosed" ADD CONSTRAINT closed_days_are_in_order CHECK (
  "fromOn" <= "toOn" AND ("kilnId" IS NULL OR "benchId" IS NULL));
ALTER TABLE "Bench" ADD CONSTRAINT bench_holds_something CHECK ("atOnce" BETWEEN 1 AND 100);

-- A route of each technique is the usual one.
CREATE UNIQUE INDEX one_usual_route ON "Route" (technique) WHERE "isUsual" AND "endedAt" IS NULL;
ALTER TABLE "RouteStep" ADD CONSTRAINT step_is_sound CHECK (
  position >= 1 AND name <> '' AND peg IN ('clay', 'dry', 'bisque', 'glaze', 'assembled', 'finished')
  AND 0 <= "shortestDays" AND "shortestDays" <= "likelyDays" AND "likelyDays" <= "longestDays" AND "longestDays" <= 400
  AND "lossPercent" >= 0 AND "lossPercent" < 100 AND "minutesEach" >= 0
  AND (kind = 'work') = ("benchId" IS NOT NULL) AND (kind = 'fire') = (cone <> '')
  AND ("shortestDays" >= 1 OR (kind <> 'fire' AND "lossPercent" = 0)));
ALTER TABLE "JobStep" ADD CONSTRAINT job_step_is_sound CHECK (
  position >= 1 AND name <> '' AND 0 <= "shortestDays" AND "shortestDays" <= "likelyDays" AND "likelyDays" <= "longestDays"
  AND "lossPercent" >= 0 AND "lossPercent" < 100 AND "minutesEach" >= 0
  AND (kind = 'work') = ("benchId" IS NOT NULL) AND (kind = 'fire') = (cone <> '')
  AND ("shortestDays" >= 1 OR (kind <> 'fire' AND "lossPercent" = 0)));

ALTER TABLE "Job" ADD CONSTRAINT job_wants_something CHECK (pieces >= 1 AND wanted >= 1 AND wanted <= pieces),
  ADD CONSTRAINT job_piece_has_size CHECK (coalesce("widthUm", 1) > 0 AND coalesce("heightUm", 1) > 0 AND coalesce("depthUm", 1) > 0);

-- How many are in a job stays as it was begun; more of them come from outside by a move.
CREATE FUNCTION job_keeps_its_count() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (NEW.pieces, NEW.wanted) IS DISTINCT FROM (OLD.pieces, OLD.wanted) AND EXISTS (SELECT 1 FROM "JobMove" WHERE "jobId" = NEW.id) THEN
    RAISE EXCEPTION '[job_keeps_its_count] Job %: it was begun, so its count stays.', NEW.number;
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER job_keeps_its_count BEFORE UPDATE ON "Job" FOR EACH ROW EXECUTE FUNCTION job_keeps_its_count();

-- Position -1 is outside: losses go there with their cause, and pieces that are begun anew come from there.
ALTER TABLE "JobMove" DROP CONSTRAINT move_goes_somewhere;
ALTER TABLE "JobMove"
  ADD CONSTRAINT move_goes_somewhere CHECK ("fromPosition" >= -1 AND "toPosition" >= -1 AND "fromPosition" <> "toPosition"),
  ADD CONSTRAINT begun_anew_is_not_begun CHECK ("fromPosition" <> -1 OR "undoesId" IS NOT NULL OR "toPosition" = 0),
  ADD CONSTRAINT loss_has_a_cause CHECK ((cause IS NOT NULL) = ("toPosition" = -1 AND "undoesId" IS NULL)),
  ADD CONSTRAINT only_new_ones_make_good CHECK ("makesGoodId" IS NULL OR ("fromPosition" = -1 AND "toPosition" = 0));

-- How many pieces of a job stand at a position, and how many of them are in a kiln that is lit.
CREATE FUNCTION pieces_standing(job uuid, place int) RETURNS int LANGUAGE sql STABLE AS $$
  SELECT (CASE WHEN place = 0 THEN (SELECT pieces FROM "Job" WHERE id = job) ELSE 0 END
    + coalesce(sum(CASE WHEN "toPosition" = place THEN pieces ELSE 0 END), 0)
    - coalesce(sum(CASE WHEN "fromPosition" = place THEN pieces ELSE 0 END), 0))::int
  FROM "JobMove" WHERE "jobId" = job
$$;
CREATE FUNCTION pieces_in_the_fire(job uuid, place int) RETURNS int LANGUAGE sql STABLE AS $$
  SELECT coalesce(sum(line.pieces), 0)::int FROM "FiringLine" line
  JOIN "FiringLit" lit ON lit."firingId" = line."firingId"
  WHERE line."jobId" = job AND line.position = place
    AND NOT EXISTS (SELECT 1 FROM "FiringOpened" opened WHERE opened."firingId" = line."firingId")
$$;

-- Pieces of a job that are begun or still to begin: neither lost nor finished.
CREATE FUNCTION pieces_under_way(job uuid) RETURNS int LANGUAGE sql STABLE AS $$
  SELECT (each.pieces + coalesce(sum(CASE
      WHEN move."fromPosition" = -1 OR move."fromPosition" > route.steps THEN move.pieces ELSE 0 END), 0)
    - coalesce(sum(CASE
      WHEN move."toPosition" = -1 OR move."toPosition" > route.steps THEN move.pieces ELSE 0 END), 0))::int
  FROM "Job" each
  CROSS JOIN LATERAL (SELECT count(*) AS steps FROM "JobStep" WHERE "jobId" = each.id) route
  LEFT JOIN "JobMove" move ON move."jobId" = each.id
  WHERE each.id = job GROUP BY each.pieces
$$;

CREATE OR REPLACE FUNCTION move_is_possible() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE job "Job"; standing int; burning int; last_step int;
BEGIN
  SELECT * INTO job FROM "Job" WHERE id = NEW."jobId" FOR UPDATE;
  SELECT coalesce(max(position), 0) INTO last_step FROM "JobStep" WHERE "jobId" = job.id;
  IF NEW."fromPosition" >= 0 THEN
    standing := pieces_standing(job.id, NEW."fromPosition");
    burning := pieces_in_the_fire(job.id, NEW."fromPosition");
    IF NEW.pieces > standing OR NEW."toPosition" > last_step + 1 THEN
      RAISE EXCEPTION '[pieces_leave_where_they_stand] Job %: % pieces cannot leave step % where % stand.', job.number, NEW.pieces, NEW."fromPosition", standing;
    END IF;
    IF NEW.pieces > standing - burning THEN
      RAISE EXCEPTION '[pieces_stay_in_a_lit_kiln] Job %: % of the pieces at step % are in a kiln that was lit.', job.number, burning, NEW."fromPosition";
    END IF;
  ELSIF NEW."toPosition" > last_step + 1 THEN
    RAISE EXCEPTION '[pieces_leave_where_they_stand] Job %: its route has no step %.', job.number, NEW."toPosition";
  END IF;
  IF NEW."fromPosition" = 0 AND NEW."toPosition" > 0 AND job."commissionId" IS NOT NULL AND NOT making_may_begin(job."commissionId", NEW."movedOn") THEN
    RAISE EXCEPTION '[making_begins_after_the_yes] Job %: agreement, sketch, colours, deposit and the days to cancel come before the clay.', job.number;
  END IF;
  RETURN NEW;
END $$;

-- No more comes into stock from a job than it has finished.
CREATE FUNCTION stock_from_finished_pieces() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE came int; finished int;
BEGIN
  SELECT coalesce(sum(pieces), 0) INTO came FROM "JobIntoStock" WHERE "jobId" = NEW."jobId";
  SELECT pieces_standing(NEW."jobId", (SELECT coalesce(max(position), 0) + 1 FROM "JobStep" WHERE "jobId" = NEW."jobId")) INTO finished;
  IF came > finished OR came < 0 THEN
    RAISE EXCEPTION '[stock_from_finished_pieces] % pieces came into stock from a job that finished %.', came, finished;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER stock_from_finished_pieces AFTER INSERT ON "JobIntoStock" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION stock_from_finished_pieces();
CREATE CONSTRAINT TRIGGER stock_from_finished_pieces AFTER INSERT ON "JobMove" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION stock_from_finished_pieces();
ALTER TABLE "JobIntoStock" ADD CONSTRAINT into_stock_counts CHECK (pieces <> 0);

ALTER TABLE "Foretold" ADD CONSTRAINT foretold_of_something CHECK ("jobId" IS NOT NULL OR "commissionId" IS NOT NULL);

-- Kilns and firings.
ALTER TABLE "Kiln" ADD CONSTRAINT kiln_is_sound CHECK (
  "insideHeightUm" > 0 AND "shelfWidthUm" > 0 AND "shelfDepthUm" > 0 AND "shelfThickUm" >= 0 AND shelves BETWEEN 1 AND 40
  AND "powerW" > 0 AND "centsPerKwh" >= 0 AND "wearCents" >= 0 AND cardinality(cones) > 0 AND "turnsAWeek" BETWEEN 1 AND 14
  AND "leastFillPercent" BETWEEN 0 AND 100 AND "longestWaitDays" BETWEEN 1 AND 200 AND "openBelowC" BETWEEN 20 AND 300 AND "elementFirings" > 0);
ALTER TABLE "Firing" ADD CONSTRAINT firing_is_of_a_kind CHECK (peg IN ('bisque', 'glaze') AND cone <> '');
ALTER TABLE "FiringLine" ADD CONSTRAINT load_line_is_sound CHECK (
  pieces > 0 AND position > 0 AND "widthUm" > 0 AND "depthUm" > 0 AND "heightUm" > 0);
ALTER TABLE "FiringResult" ADD CONSTRAINT result_is_sound CHECK (
  pieces > 0 AND (outcome <> 'lost' OR cause IS NOT NULL) AND (outcome = 'fire_again') = ("moveId" IS NULL));
ALTER TABLE "FiringOpened" ADD CONSTRAINT firing_took_something CHECK ("wattHours" >= 0 AND "costCents" >= 0);

CREATE FUNCTION load_is_laid_before_it_is_lit() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE firing uuid := coalesce(NEW."firingId", OLD."firingId");
BEGIN
  PERFORM 1 FROM "Firing" WHERE id = firing FOR UPDATE;
  IF EXISTS (SELECT 1 FROM "FiringLit" WHERE "firingId" = firing) OR EXISTS (SELECT 1 FROM "Firing" WHERE id = firing AND "calledOffAt" IS NOT NULL) THEN
    RAISE EXCEPTION '[load_is_laid_before_it_is_lit] What lies in a kiln stays as it was when it was lit.';
  END IF;
  RETURN coalesce(NEW, OLD);
END $$;
CREATE TRIGGER load_is_laid_before_it_is_lit BEFORE INSERT OR UPDATE OR DELETE ON "FiringLine"
  FOR EACH ROW EXECUTE FUNCTION load_is_laid_before_it_is_lit();

-- A kiln burns one load; only pieces that stand there, at a firing of that cone, are in it.
CREATE FUNCTION kiln_is_lit() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE load "Firing"; line "FiringLine"; standing int;
BEGIN
  SELECT * INTO load FROM "Firing" WHERE id = NEW."firingId" FOR UPDATE;
  PERFORM 1 FROM "Kiln" WHERE id = load."kilnId" FOR UPDATE;
  IF load."calledOffAt" IS NOT NULL THEN
    RAISE EXCEPTION '[firing_was_called_off] Firing % was called off.', load.number;
  END IF;
  IF EXISTS (SELECT 1 FROM "FiringLit" lit JOIN "Firing" other ON other.id = lit."firingId"
      LEFT JOIN "FiringOpened" opened ON opened."firingId" = other.id
      WHERE other."kilnId" = load."kilnId" AND opened."firingId" IS NULL) THEN
    RAISE EXCEPTION '[kiln_burns_one_load] The kiln of firing % is lit already.', load.number;
  END IF;
  FOR line IN SELECT * FROM "FiringLine" WHERE "firingId" = load.id LOOP
    PERFORM 1 FROM "Job" WHERE id = line."jobId" FOR UPDATE;
    IF NOT EXISTS (SELECT 1 FROM "JobStep" WHERE "jobId" = line."jobId" AND position = line.position AND kind = 'fire' AND cone = load.cone) THEN
      RAISE EXCEPTION '[load_is_of_one_cone] Firing %: pieces that wait for another cone are in it.', load.number;
    END IF;
    standing := pieces_standing(line."jobId", line.position) - pieces_in_the_fire(line."jobId", line.position);
    IF line.pieces > standing THEN
      RAISE EXCEPTION '[pieces_stand_where_they_are_fired] Firing %: % pieces are in it of which % stand there.', load.number, line.pieces, standing;
    END IF;
  END LOOP;
  RETURN NEW;
END $$;
CREATE TRIGGER kiln_is_lit BEFORE INSERT ON "FiringLit" FOR EACH ROW EXECUTE FUNCTION kiln_is_lit();

CREATE FUNCTION firing_was_lit() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NOT EXISTS (SELECT 1 FROM "FiringLit" WHERE "firingId" = NEW."firingId" AND at <= NEW.at) THEN
    RAISE EXCEPTION '[firing_was_lit] A kiln that was not lit has nothing to read and is not opened.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER firing_was_lit BEFORE INSERT ON "FiringReading" FOR EACH ROW EXECUTE FUNCTION firing_was_lit();
CREATE TRIGGER firing_was_lit BEFORE INSERT ON "FiringOpened" FOR EACH ROW EXECUTE FUNCTION firing_was_lit();

-- Every piece of an opened load has come out somehow, each once.
CREATE FUNCTION every_piece_came_out() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT 1 FROM "FiringLine" line
      LEFT JOIN "FiringResult" result ON result."lineId" = line.id
      WHERE line."firingId" = NEW."firingId" GROUP BY line.id, line.pieces HAVING coalesce(sum(result.pieces), 0) <> line.pieces) THEN
    RAISE EXCEPTION '[every_piece_came_out] Of every line of an opened load it is told how all its pieces came out.';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER every_piece_came_out AFTER INSERT ON "FiringOpened" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION every_piece_came_out();
CREATE FUNCTION result_of_an_opened_load() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE line "FiringLine"; told int;
BEGIN
  SELECT * INTO line FROM "FiringLine" WHERE id = NEW."lineId";
  SELECT coalesce(sum(pieces), 0) INTO told FROM "FiringResult" WHERE "lineId" = line.id;
  IF NOT EXISTS (SELECT 1 FROM "FiringOpened" WHERE "firingId" = line."firingId") OR told + NEW.pieces > line.pieces THEN
    RAISE EXCEPTION '[every_piece_came_out] Pieces come out of an opened load, each once.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER result_of_an_opened_load BEFORE INSERT ON "FiringResult" FOR EACH ROW EXECUTE FUNCTION result_of_an_opened_load();

-- Parts: a move of a job that has a numbered drawing says which parts went, and they stood there.
ALTER TABLE "PartMap" ADD CONSTRAINT drawing_has_size CHECK ("widthUm" > 0 AND "heightUm" > 0);
ALTER TABLE "PartShape" ADD CONSTRAINT part_number_counts CHECK (number BETWEEN 1 AND 999);
ALTER TABLE "Part" ADD CONSTRAINT part_make_counts CHECK (make >= 1);
ALTER TABLE "PartGlaze" ADD CONSTRAINT coats_count CHECK (coats BETWEEN 1 AND 20);

CREATE FUNCTION part_stands_at(part uuid) RETURNS int LANGUAGE sql STABLE AS $$
  SELECT coalesce((SELECT move."toPosition" FROM "PartMove" went JOIN "JobMove" move ON move.id = went."moveId"
    WHERE went."partId" = part ORDER BY move.id DESC LIMIT 1), 0)
$$;
CREATE FUNCTION part_leaves_where_it_stands() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE move "JobMove"; part "Part"; place int;
BEGIN
  SELECT * INTO move FROM "JobMove" WHERE id = NEW."moveId";
  SELECT * INTO part FROM "Part" WHERE id = NEW."partId";
  IF part."jobId" <> move."jobId" THEN
    RAISE EXCEPTION '[part_leaves_where_it_stands] Part % belongs to another job.', part.number;
  END IF;
  place := part_stands_at(part.id);
  IF move."fromPosition" = -1 AND move."undoesId" IS NULL THEN
    IF EXISTS (SELECT 1 FROM "PartMove" WHERE "partId" = part.id) THEN
      RAISE EXCEPTION '[part_leaves_where_it_stands] Part % was begun already.', part.number;
    END IF;
  ELSIF place <> move."fromPosition" THEN
    RAISE EXCEPTION '[part_leaves_where_it_stands] Part % stands at step %, not %.', part.number, place, move."fromPosition";
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER part_leaves_where_it_stands BEFORE INSERT ON "PartMove" FOR EACH ROW EXECUTE FUNCTION part_leaves_where_it_stands();
CREATE FUNCTION move_names_its_parts() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT 1 FROM "Part" WHERE "jobId" = NEW."jobId")
    AND (SELECT count(*) FROM "PartMove" WHERE "moveId" = NEW.id) <> NEW.pieces THEN
    RAISE EXCEPTION '[move_names_its_parts] Of a job with a numbered drawing a move says which parts went.';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER move_names_its_parts AFTER INSERT ON "JobMove" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION move_names_its_parts();
-- The drawing is made before the clay is: later only parts that are begun anew are added.
CREATE FUNCTION parts_come_before_the_clay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' THEN
    IF EXISTS (SELECT 1 FROM "JobMove" WHERE "jobId" = OLD."jobId") THEN
      RAISE EXCEPTION '[parts_come_before_the_clay] Part % stays: its job was begun.', OLD.number;
    END IF;
    RETURN OLD;
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER parts_come_before_the_clay BEFORE DELETE ON "Part" FOR EACH ROW EXECUTE FUNCTION parts_come_before_the_clay();
-- As many parts as the job has pieces: those it began with, and those that came from outside.
CREATE FUNCTION as_many_parts_as_pieces() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE job uuid; parts int; pieces int;
BEGIN
  job := CASE WHEN TG_TABLE_NAME = 'Job' THEN to_jsonb(NEW)->>'id'
    WHEN TG_OP = 'DELETE' THEN to_jsonb(OLD)->>'jobId' ELSE to_jsonb(NEW)->>'jobId' END;
  SELECT count(*) INTO parts FROM "Part" WHERE "jobId" = job;
  SELECT each.pieces + coalesce((SELECT sum(CASE WHEN "fromPosition" = -1 AND "undoesId" IS NULL THEN move.pieces ELSE 0 END)
    FROM "JobMove" move WHERE move."jobId" = job), 0) INTO pieces FROM "Job" each WHERE each.id = job;
  IF parts > 0 AND parts <> pieces THEN
    RAISE EXCEPTION '[as_many_parts_as_pieces] A job of % pieces has a drawing of % parts.', pieces, parts;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER as_many_parts_as_pieces AFTER INSERT OR DELETE ON "Part" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION as_many_parts_as_pieces();
CREATE CONSTRAINT TRIGGER as_many_parts_as_pieces AFTER UPDATE ON "Job" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION as_many_parts_as_pieces();
CREATE CONSTRAINT TRIGGER as_many_parts_as_pieces AFTER INSERT ON "JobMove" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION as_many_parts_as_pieces();

-- A recipe's base adds up to a hundred.
ALTER TABLE "GlazeRecipeMaterial" ADD CONSTRAINT material_is_some_of_it CHECK (percent > 0 AND percent <= 100 AND material <> '');
ALTER TABLE "Glaze" ADD CONSTRAINT glaze_is_laid_on CHECK (coats BETWEEN 1 AND 20 AND cone <> '');
ALTER TABLE "TestTile" ADD CONSTRAINT tile_is_laid_on CHECK (coats BETWEEN 1 AND 20 AND cone <> '');
ALTER TABLE "GlazeProof" ADD CONSTRAINT proof_has_samples CHECK (
  cardinality("leadMgPerL") BETWEEN 1 AND 12 AND cardinality("cadmiumMgPerL") BETWEEN 1 AND 12
  AND 0 <= ALL ("leadMgPerL") AND 0 <= ALL ("cadmiumMgPerL"));
CREATE FUNCTION base_is_a_hundred() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE base numeric;
BEGIN
  SELECT coalesce(sum(percent), 0) INTO base FROM "GlazeRecipeMaterial" WHERE "recipeId" = NEW.id AND NOT "isAddition";
  IF base <> 100 THEN
    RAISE EXCEPTION '[base_is_a_hundred] The base of a recipe comes to % of a hundred.', base;
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER base_is_a_hundred AFTER INSERT ON "GlazeRecipe" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION base_is_a_hundred();
ALTER TABLE "Mould" ADD CONSTRAINT mould_is_not_its_own_model CHECK ("fromId" IS NULL OR "fromId" <> id);
ALTER TABLE "Mould" ADD CONSTRAINT mould_takes_slip CHECK ("slipMl" IS NULL OR "slipMl" > 0);

-- The routes that every studio here begins with; common practice, to be replaced by its own.
INSERT INTO "Route" (id, name, technique, "isUsual") VALUES
  (gen_random_uuid(), 'Hand-built slab relief', 'slab_relief', true),
  (gen_random_uuid(), 'Slip-cast', 'slip_cast', true),
  (gen_random_uuid(), 'Press-moulded', 'press_moulded', true),
  (gen_random_uuid(), 'Thrown', 'thrown', true);
INSERT INTO "RouteStep" ("routeId", position, name, peg, kind, "benchId", cone, "shortestDays", "likelyDays", "longestDays", "isTogether", "lossPercent", "minutesEach", caution)
SELECT route.id, step.position, step.name, step.peg, step.kind::"StepKind", bench.id, step.cone, step.shortest, step.likely, step.longest, step.together, step.loss, step.minutes, step.caution
FROM (VALUES
  ('slab_relief', 1, 'transferring the sketch', 'clay', 'work', 'modelling bench', '', 1, 2, 4, false, 0::numeric, 4::numeric, 'Draw it at wet size, and write the wet and the fired size on the template.'),
  ('slab_relief', 2, 'rolling the slab', 'clay', 'work', 'modelling bench', '', 1, 1, 3, false, 0::numeric, 6::numeric, ''),
  ('slab_relief', 3, 'cutting and modelling', 'clay', 'work', 'modelling bench', '', 7, 14, 21, false, 1::numeric, 90::numeric, 'Hollow or rib every back over an inch, leave no sealed hollow, and put its number on it. Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, and wear a respirator that fits when anything is sanded dry.'),
  ('slab_relief', 4, 'drying', 'dry', 'dry', NULL, '', 14, 21, 35, false, 5::numeric, 0::numeric, 'Dry slowly, covered at the edges, so that both sides dry alike. Boards above and below, turned daily.'),
  ('slab_relief', 5, 'the bisque kiln', 'bisque', 'fire', NULL, '04', 2, 3, 4, false, 3::numeric, 2::numeric, 'Only bone-dry pieces go in: cold to the cheek is still wet, and trapped moisture turns to steam that bursts the piece and its neighbours. Climb slowly. The room is ventilated, the wiring is a licensed electrician’s, and the lid stays shut above the maker’s limit.'),
  ('slab_relief', 6, 'glazing', 'glaze', 'work', 'glazing bench', '', 3, 5, 10, false, 0::numeric, 20::numeric, 'Raw glazes may hold barium, manganese or copper: gloves, and a respirator for dry mixing. Nothing is sold for food before a laboratory’s leach test says so.'),
  ('slab_relief', 7, 'the glaze kiln', 'glaze', 'fire', NULL, '6', 2, 3, 4, false, 3::numeric, 2::numeric, 'Keep the room ventilated and nothing that burns near the kiln. Its wiring is a licensed electrician’s. Nobody opens it above the maker’s limit: early air cracks the glaze.'),
  ('slab_relief', 8, 'the second glazing', 'glaze', 'work', 'glazing bench', '', 2, 3, 6, false, 0::numeric, 10::numeric, 'Raw glazes may hold barium, manganese or copper: gloves, and a respirator for dry mixing. Nothing is sold for food before a laboratory’s leach test says so.'),
  ('slab_relief', 9, 'the second glaze kiln', 'glaze', 'fire', NULL, '05', 2, 3, 4, false, 2::numeric, 2::numeric, 'Keep the room ventilated and nothing that burns near the kiln. Its wiring is a licensed electrician’s. Nobody opens it above the maker’s limit: early air cracks the glaze.'),
  ('slab_relief', 10, 'assembly on the board', 'assembled', 'work', 'assembly table', '', 2, 4, 6, true, 0::numeric, 8::numeric, 'Fired edges are sharp. Look for glaze drips with gloved fingers. Two lift from about 50 lb. Adhesives want gloves, moving air and no open flame.'),
  ('slab_relief', 11, 'curing', 'assembled', 'wait', NULL, '', 7, 8, 14, true, 0::numeric, 0::numeric, 'Nothing stands upright before day seven.'),
  ('slab_relief', 12, 'frame and cleat', 'finished', 'work', 'assembly table', '', 1, 3, 6, true, 0::numeric, 4::numeric, 'Weigh it and write the weight on the label before anyone books a wall.'),
  ('slab_relief', 13, 'checking', 'finished', 'work', 'assembly table', '', 1, 1, 2, true, 0::numeric, 1::numeric, 'Look at it in the light it will hang in, and pull at every part with gloved hands.'),
  ('slip_cast', 1, 'casting', 'clay', 'work', 'casting table', '', 1, 3, 7, false, 8::numeric, 8::numeric, 'Let plaster moulds dry between casts. Mop spilt slip wet.'),
  ('slip_cast', 2, 'fettling', 'clay', 'work', 'modelling bench', '', 1, 1, 2, false, 0::numeric, 6::numeric, 'Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, and wear a respirator that fits when anything is sanded dry.'),
  ('slip_cast', 3, 'drying', 'dry', 'dry', NULL, '', 5, 10, 14, false, 4::numeric, 0::numeric, 'Dry slowly, covered at the edges, so that both sides dry alike. Flat, on grids.'),
  ('slip_cast', 4, 'the bisque kiln', 'bisque', 'fire', NULL, '04', 2, 3, 4, false, 2::numeric, 2::numeric, 'Only bone-dry pieces go in: cold to the cheek is still wet, and trapped moisture turns to steam that bursts the piece and its neighbours. Climb slowly. The room is ventilated, the wiring is a licensed electrician’s, and the lid stays shut above the maker’s limit.'),
  ('slip_cast', 5, 'glazing', 'glaze', 'work', 'glazing bench', '', 1, 3, 6, false, 0::numeric, 10::numeric, 'Raw glazes may hold barium, manganese or copper: gloves, and a respirator for dry mixing. Nothing is sold for food before a laboratory’s leach test says so.'),
  ('slip_cast', 6, 'the glaze kiln', 'glaze', 'fire', NULL, '6', 2, 3, 4, false, 4.5::numeric, 2::numeric, 'Keep the room ventilated and nothing that burns near the kiln. Its wiring is a licensed electrician’s. Nobody opens it above the maker’s limit: early air cracks the glaze.'),
  ('slip_cast', 7, 'sorting', 'finished', 'work', 'assembly table', '', 1, 1, 3, false, 0::numeric, 5::numeric, 'Fired edges are sharp. Look for glaze drips with gloved fingers.'),
  ('press_moulded', 1, 'pressing', 'clay', 'work', 'casting table', '', 1, 2, 5, false, 4::numeric, 6::numeric, 'Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, and wear a respirator that fits when anything is sanded dry.'),
  ('press_moulded', 2, 'fettling', 'clay', 'work', 'modelling bench', '', 1, 1, 2, false, 0::numeric, 6::numeric, 'Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, and wear a respirator that fits when anything is sanded dry.'),
  ('press_moulded', 3, 'drying', 'dry', 'dry', NULL, '', 5, 10, 14, false, 4::numeric, 0::numeric, 'Dry slowly, covered at the edges, so that both sides dry alike. Flat, on grids.'),
  ('press_moulded', 4, 'the bisque kiln', 'bisque', 'fire', NULL, '04', 2, 3, 4, false, 1.5::numeric, 2::numeric, 'Only bone-dry pieces go in: cold to the cheek is still wet, and trapped moisture turns to steam that bursts the piece and its neighbours. Climb slowly. The room is ventilated, the wiring is a licensed electrician’s, and the lid stays shut above the maker’s limit.'),
  ('press_moulded', 5, 'glazing', 'glaze', 'work', 'glazing bench', '', 1, 3, 6, false, 0::numeric, 10::numeric, 'Raw glazes may hold barium, manganese or copper: gloves, and a respirator for dry mixing. Nothing is sold for food before a laboratory’s leach test says so.'),
  ('press_moulded', 6, 'the glaze kiln', 'glaze', 'fire', NULL, '6', 2, 3, 4, false, 4.5::numeric, 2::numeric, 'Keep the room ventilated and nothing that burns near the kiln. Its wiring is a licensed electrician’s. Nobody opens it above the maker’s limit: early air cracks the glaze.'),
  ('press_moulded', 7, 'sorting', 'finished', 'work', 'assembly table', '', 1, 1, 3, false, 0::numeric, 9::numeric, 'Fired edges are sharp. Look for glaze drips with gloved fingers.'),
  ('thrown', 1, 'throwing', 'clay', 'work', 'wheel', '', 1, 2, 3, false, 2::numeric, 8::numeric, 'Mop the splash pan and the floor wet, the same day.'),
  ('thrown', 2, 'trimming', 'clay', 'work', 'wheel', '', 1, 1, 2, false, 3::numeric, 8::numeric, 'Clay dust holds silica, and fine silica harms lungs for good. Wipe and mop wet, never sweep, and wear a respirator that fits when anything is sanded dry.'),
  ('thrown', 3, 'drying', 'dry', 'dry', NULL, '', 5, 12, 21, false, 6::numeric, 0::numeric, 'Dry slowly, covered at the edges, so that both sides dry alike. Platters longest of all.'),
  ('thrown', 4, 'the bisque kiln', 'bisque', 'fire', NULL, '04', 2, 3, 4, false, 1.5::numeric, 2::numeric, 'Only bone-dry pieces go in: cold to the cheek is still wet, and trapped moisture turns to steam that bursts the piece and its neighbours. Climb slowly. The room is ventilated, the wiring is a licensed electrician’s, and the lid stays shut above the maker’s limit.'),
  ('thrown', 5, 'glazing', 'glaze', 'work', 'glazing bench', '', 1, 2, 5, false, 0::numeric, 10::numeric, 'Raw glazes may hold barium, manganese or copper: gloves, and a respirator for dry mixing. Nothing is sold for food before a laboratory’s leach test says so.'),
  ('thrown', 6, 'the glaze kiln', 'glaze', 'fire', NULL, '6', 2, 3, 4, false, 6::numeric, 2::numeric, 'Keep the room ventilated and nothing that burns near the kiln. Its wiring is a licensed electrician’s. Nobody opens it above the maker’s limit: early air cracks the glaze.'),
  ('thrown', 7, 'finishing', 'finished', 'work', 'assembly table', '', 1, 2, 7, false, 1::numeric, 8::numeric, 'Lamps are wired from listed parts by a qualified person. Planters stand a day with water.')
) AS step (technique, position, name, peg, kind, bench, cone, shortest, likely, longest, together, loss, minutes, caution)
JOIN "Route" route ON route.technique::text = step.technique
LEFT JOIN "Bench" bench ON bench.name = step.bench;
UPDATE "Job" SET "routeId" = route.id FROM "Route" route WHERE route.technique = "Job".technique;
