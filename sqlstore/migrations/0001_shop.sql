-- The same statements run on SQLite and PostgreSQL. Words that are sorted or
-- searched by their beginning are BYTEA, which both compare by bytes; TEXT
-- would be compared by the database's own collation. Instants are microseconds
-- since 1970, UTC.

-- +goose Up
CREATE TABLE settings (
    name  TEXT PRIMARY KEY,
    value BYTEA NOT NULL
);

CREATE TABLE jobs (
    ordinal    INTEGER PRIMARY KEY, -- the store's own count
    id         TEXT    NOT NULL UNIQUE,
    head_seq   BIGINT  NOT NULL,
    head_hash  TEXT    NOT NULL,
    state      TEXT    NOT NULL,
    changed_at BIGINT  NOT NULL,
    line       TEXT    NOT NULL, -- JSON of shop.Line
    found_by   TEXT    NOT NULL  -- JSON of what stands in the tables job_*
);
CREATE INDEX jobs_by_change ON jobs (changed_at, ordinal);
CREATE INDEX jobs_by_state ON jobs (state, changed_at, ordinal);

CREATE TABLE entries (
    job      INTEGER NOT NULL REFERENCES jobs (ordinal),
    seq      BIGINT  NOT NULL,
    hash     TEXT    NOT NULL,
    body     TEXT    NOT NULL, -- canonical JSON, the only truth; the rest is index
    slot     TEXT    NOT NULL,
    corrects BIGINT  NOT NULL,
    ticket   TEXT,
    PRIMARY KEY (job, seq),
    UNIQUE (job, slot, corrects), -- two entries never follow the same one
    UNIQUE (job, ticket)
);

CREATE TABLE job_numbers (
    number BYTEA   NOT NULL,
    job    INTEGER NOT NULL REFERENCES jobs (ordinal),
    PRIMARY KEY (number, job)
);

CREATE TABLE job_terms (
    term BYTEA   NOT NULL,
    job  INTEGER NOT NULL REFERENCES jobs (ordinal),
    PRIMARY KEY (term, job)
);

CREATE TABLE job_marks (
    mark TEXT    NOT NULL,
    job  INTEGER NOT NULL REFERENCES jobs (ordinal),
    PRIMARY KEY (mark, job)
);

CREATE TABLE job_uses (
    kind     TEXT             NOT NULL,
    card     TEXT             NOT NULL,
    job      INTEGER          NOT NULL REFERENCES jobs (ordinal),
    slot     TEXT             NOT NULL,
    quantity DOUBLE PRECISION NOT NULL,
    reserved BOOLEAN          NOT NULL,
    PRIMARY KEY (kind, card, job, slot)
);

CREATE TABLE cards (
    kind       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    revision   BIGINT  NOT NULL, -- the newest one, in card_revisions
    sort       BYTEA   NOT NULL,
    belongs    TEXT    NOT NULL,
    state      TEXT    NOT NULL,
    retired    BOOLEAN NOT NULL,
    terms      TEXT    NOT NULL, -- JSON of what stands in card_terms
    PRIMARY KEY (kind, id)
);
CREATE INDEX cards_in_order ON cards (kind, sort, id);
CREATE INDEX cards_by_group ON cards (kind, belongs, sort, id);

CREATE TABLE card_revisions (
    kind       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    revision   BIGINT  NOT NULL,
    body       TEXT    NOT NULL,
    about      TEXT    NOT NULL, -- JSON of shop.Card without its body
    PRIMARY KEY (kind, id, revision)
);

CREATE TABLE card_terms (
    kind TEXT  NOT NULL,
    term BYTEA NOT NULL,
    id   TEXT  NOT NULL,
    PRIMARY KEY (kind, term, id)
);

CREATE TABLE sessions (
    token_hash TEXT   PRIMARY KEY,
    person     TEXT   NOT NULL,
    device     TEXT   NOT NULL,
    began_at   BIGINT NOT NULL,
    seen_at    BIGINT NOT NULL,
    ends_at    BIGINT NOT NULL
);

CREATE TABLE tries (
    name     TEXT   PRIMARY KEY,
    count    BIGINT NOT NULL,
    last_at  BIGINT NOT NULL,
    until_at BIGINT NOT NULL
);
