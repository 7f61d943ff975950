-- Run once by the database container, as superuser, when its volume is new: the three roles of Endfloat.
-- libs/persistence/src/embedded/roles.ts makes the same ones where Endfloat makes them itself; a test compares.
\set owner_password `cat /run/secrets/owner`
\set api_password `cat /run/secrets/api`
\set worker_password `cat /run/secrets/worker`

CREATE ROLE endfloat_owner LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE PASSWORD :'owner_password';
CREATE ROLE endfloat_api LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE PASSWORD :'api_password';
CREATE ROLE endfloat_worker LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE PASSWORD :'worker_password';

ALTER ROLE endfloat_owner SET statement_timeout = '0';
ALTER ROLE endfloat_owner SET lock_timeout = '30s';
ALTER ROLE endfloat_owner SET idle_in_transaction_session_timeout = '5min';
ALTER ROLE endfloat_api SET statement_timeout = '15s';
ALTER ROLE endfloat_api SET lock_timeout = '5s';
ALTER ROLE endfloat_api SET idle_in_transaction_session_timeout = '20s';
ALTER ROLE endfloat_worker SET statement_timeout = '5min';
ALTER ROLE endfloat_worker SET lock_timeout = '15s';
ALTER ROLE endfloat_worker SET idle_in_transaction_session_timeout = '1min';

ALTER DATABASE endfloat OWNER TO endfloat_owner;
REVOKE ALL ON DATABASE endfloat FROM PUBLIC;
GRANT CONNECT ON DATABASE endfloat TO endfloat_api, endfloat_worker;
