-- Released jobs as rates see them: a projection made from the records, dropped and made again at will.
CREATE TABLE settled_job (
  shop_id uuid NOT NULL,
  job_id uuid NOT NULL,
  method_version integer NOT NULL,
  vehicle_id uuid NOT NULL,
  customer_id uuid,
  released_at timestamptz(6) NOT NULL,
  closes_at timestamptz(6) NOT NULL,
  closed_by text NOT NULL,
  is_repeat boolean NOT NULL,
  comeback_at timestamptz(6),
  any_comeback_at timestamptz(6),
  first_seen_at timestamptz(6),
  seen_after_closing_at timestamptz(6),
  last_seen_at timestamptz(6),
  diagnosed_by uuid,
  age_years integer,
  mix text NOT NULL,
  fitted_by uuid[],
  symptoms text[],
  symptom_families text[],
  actions text[],
  components text[],
  part_conditions text[],
  suppliers text[],
  counts_against text[],
  unattributed boolean NOT NULL,
  comebacks integer NOT NULL,
  cost numeric(24,9) NOT NULL,
  cost_gaps integer NOT NULL,
  repeats jsonb NOT NULL,
  CONSTRAINT settled_job_pkey PRIMARY KEY (shop_id, job_id)
);
CREATE INDEX settled_job_shop_id_vehicle_id_idx ON settled_job (shop_id, vehicle_id);
CREATE INDEX settled_job_shop_id_released_at_job_id_idx ON settled_job (shop_id, released_at, job_id);
CREATE INDEX settled_job_shop_id_method_version_idx ON settled_job (shop_id, method_version);

-- Vehicles of which something was recorded that their settled jobs do not know yet.
CREATE TABLE settled_job_change (
  shop_id uuid NOT NULL,
  id uuid NOT NULL DEFAULT gen_random_uuid(),
  vehicle_id uuid NOT NULL,
  CONSTRAINT settled_job_change_pkey PRIMARY KEY (shop_id, id)
);
CREATE INDEX settled_job_change_shop_id_vehicle_id_idx ON settled_job_change (shop_id, vehicle_id);

-- What was recorded before this migration: every vehicle with a job. The owner looks across shops this once.
ALTER TABLE job NO FORCE ROW LEVEL SECURITY;
INSERT INTO settled_job_change (shop_id, vehicle_id) SELECT DISTINCT shop_id, vehicle_id FROM job;
ALTER TABLE job FORCE ROW LEVEL SECURITY;

SELECT endfloat_keep_shops_apart('settled_job');
SELECT endfloat_grant('SELECT, INSERT', 'settled_job');
SELECT endfloat_keep_shops_apart('settled_job_change');
SELECT endfloat_grant('SELECT, INSERT', 'settled_job_change');

-- Every revision of a record that settled jobs are made from marks its vehicle, in the transaction that writes it.
CREATE FUNCTION endfloat_mark_settled_jobs() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  CASE TG_TABLE_NAME
    WHEN 'vehicle_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, a.id FROM added a
      WHERE EXISTS (SELECT FROM job j WHERE j.shop_id = a.shop_id AND j.vehicle_id = a.id);
    WHEN 'vehicle_ownership_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, o.vehicle_id FROM added a
      JOIN vehicle_ownership o ON o.shop_id = a.shop_id AND o.id = a.id
      WHERE EXISTS (SELECT FROM job j WHERE j.shop_id = a.shop_id AND j.vehicle_id = o.vehicle_id);
    WHEN 'odometer_entry_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, o.vehicle_id FROM added a
      JOIN odometer_entry o ON o.shop_id = a.shop_id AND o.id = a.id
      WHERE EXISTS (SELECT FROM job j WHERE j.shop_id = a.shop_id AND j.vehicle_id = o.vehicle_id);
    WHEN 'complaint_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, c.vehicle_id FROM added a
      JOIN complaint c ON c.shop_id = a.shop_id AND c.id = a.id
      WHERE EXISTS (SELECT FROM job j WHERE j.shop_id = a.shop_id AND j.vehicle_id = c.vehicle_id);
    WHEN 'job_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, j.vehicle_id FROM added a
      JOIN job j ON j.shop_id = a.shop_id AND j.id = a.id;
    WHEN 'work_line_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, j.vehicle_id FROM added a
      JOIN work_line w ON w.shop_id = a.shop_id AND w.id = a.id
      JOIN job j ON j.shop_id = w.shop_id AND j.id = w.job_id;
    WHEN 'release_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, j.vehicle_id FROM added a
      JOIN release r ON r.shop_id = a.shop_id AND r.id = a.id
      JOIN job j ON j.shop_id = r.shop_id AND j.id = r.job_id;
    WHEN 'comeback_revision' THEN
      INSERT INTO settled_job_change (shop_id, vehicle_id)
      SELECT DISTINCT a.shop_id, j.vehicle_id FROM added a
      JOIN comeback b ON b.shop_id = a.shop_id AND b.id = a.id
      JOIN job j ON j.shop_id = b.shop_id AND j.id = b.job_id;
  END CASE;
  RETURN NULL;
END $$;

DO $$
DECLARE watched text;
BEGIN
  FOREACH watched IN ARRAY ARRAY['vehicle_revision', 'vehicle_ownership_revision', 'odometer_entry_revision',
    'complaint_revision', 'job_revision', 'work_line_revision', 'release_revision', 'comeback_revision']
  LOOP
    EXECUTE format(
      'CREATE TRIGGER settled_jobs_marked AFTER INSERT ON %I REFERENCING NEW TABLE AS added
       FOR EACH STATEMENT EXECUTE FUNCTION endfloat_mark_settled_jobs()', watched);
  END LOOP;
END $$;

-- Takes marks of the shop of the transaction and drops what was settled of their vehicles, which is then settled again in
-- the same transaction. The working roles delete nowhere themselves. Marks that commit later stay for the next time.
CREATE FUNCTION endfloat_take_settled_job_changes(most integer) RETURNS TABLE (vehicle_id uuid)
LANGUAGE sql SECURITY DEFINER SET search_path FROM CURRENT AS $$
  WITH taken AS MATERIALIZED (
    SELECT DISTINCT c.shop_id, c.vehicle_id FROM settled_job_change c
    WHERE c.shop_id = nullif(current_setting('app.shop', true), '')::uuid
    ORDER BY c.vehicle_id LIMIT most
  ), unmarked AS (
    DELETE FROM settled_job_change c USING taken t WHERE c.shop_id = t.shop_id AND c.vehicle_id = t.vehicle_id
  ), dropped AS (
    DELETE FROM settled_job s USING taken t WHERE s.shop_id = t.shop_id AND s.vehicle_id = t.vehicle_id
  )
  SELECT t.vehicle_id FROM taken t ORDER BY t.vehicle_id
$$;

-- Settled proposals by what they rested on: asked when a complaint is taken.
CREATE INDEX comeback_revision_settled_ground ON comeback_revision (shop_id, (document->>'ground'), state)
  WHERE replaced_at IS NULL AND state <> 'proposed';
