-- Tables a shop has learned from its own settled history: a projection that can be dropped and rebuilt, kept by hash so that
-- whatever was reckoned with them can be reckoned again. The latest of a subject is the one in use.
CREATE TABLE "learned_tables" (
    "shop_id" UUID NOT NULL,
    "subject" TEXT NOT NULL,
    "learned_at" TIMESTAMPTZ(6) NOT NULL,
    "tables_version" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "document" JSONB NOT NULL,

    CONSTRAINT "learned_tables_pkey" PRIMARY KEY ("shop_id","subject","learned_at")
);

CREATE INDEX "learned_tables_shop_id_subject_hash_idx" ON "learned_tables"("shop_id", "subject", "hash");

SELECT endfloat_keep_shops_apart('learned_tables');
SELECT endfloat_grant('SELECT, INSERT', 'learned_tables');
