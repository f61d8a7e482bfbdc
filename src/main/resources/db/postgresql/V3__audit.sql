-- Every change by a person, in the order in which it was made. Each row's hash covers the row and the
-- hash of the row before it (see store/AuditChain), so that no row can be changed, taken out or put in
-- without every later hash telling. Rows are only ever added.
CREATE TABLE audit (
  id      BIGINT PRIMARY KEY,
  at      BIGINT NOT NULL,
  by_whom TEXT   NOT NULL,
  action  TEXT   NOT NULL,
  subject TEXT   NOT NULL,
  detail  TEXT   NOT NULL,
  hash    TEXT   NOT NULL
);

CREATE FUNCTION audit_is_kept() RETURNS trigger LANGUAGE plpgsql AS
$$ BEGIN RAISE EXCEPTION 'rows of the audit chain are never changed and never deleted'; END $$;

CREATE TRIGGER audit_is_never_changed BEFORE UPDATE OR DELETE ON audit
FOR EACH ROW EXECUTE FUNCTION audit_is_kept();
