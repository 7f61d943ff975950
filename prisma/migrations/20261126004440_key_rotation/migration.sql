-- Keys that may only read, that take the place of others, and that tell when they were last used and who ended them.
-- Every column has a default or may be empty, so processes of the version before go on beside it.
ALTER TABLE "api_key"
  ADD COLUMN "read_only" BOOLEAN NOT NULL DEFAULT false,
  ADD COLUMN "replaces" UUID,
  ADD COLUMN "revoked_by" UUID,
  ADD COLUMN "last_used_at" TIMESTAMPTZ(6);

-- CreateIndex
CREATE UNIQUE INDEX "api_key_shop_id_replaces_key" ON "api_key"("shop_id", "replaces");

-- AddForeignKey
ALTER TABLE "api_key" ADD CONSTRAINT "api_key_shop_id_replaces_fkey" FOREIGN KEY ("shop_id", "replaces") REFERENCES "api_key"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A key is revoked once and stays revoked; it may end sooner than was said, never later.
CREATE OR REPLACE FUNCTION endfloat_only_revoke() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.revoked_at IS NOT NULL AND (NEW.revoked_at IS DISTINCT FROM OLD.revoked_at OR NEW.revoked_by IS DISTINCT FROM OLD.revoked_by) THEN
    RAISE EXCEPTION 'a key is revoked once and for good' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  IF NEW.expires_at IS DISTINCT FROM OLD.expires_at AND (NEW.expires_at IS NULL OR NEW.expires_at > OLD.expires_at) THEN
    RAISE EXCEPTION 'a key never ends later than was said' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END $$;
SELECT endfloat_grant('UPDATE (expires_at, revoked_by, last_used_at)', 'api_key');
