-- The first shape of the bench log. Every entry has one row in entry, numbered in the order of
-- writing, and what it says in the table of its kind. Names of columns end in their unit.
CREATE TABLE bath (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL COLLATE NOCASE UNIQUE CHECK (length(trim(name)) > 0),
  recipe TEXT,
  soluble_anode INTEGER CHECK (soluble_anode IN (0, 1))
) STRICT;

CREATE TABLE entry (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('job', 'weighing', 'coupon', 'bath', 'counter')),
  date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
  note TEXT
) STRICT;

CREATE TABLE job (
  entry INTEGER PRIMARY KEY REFERENCES entry (id),
  file TEXT NOT NULL
) STRICT;

CREATE TABLE job_step (
  entry INTEGER NOT NULL REFERENCES job (entry),
  position INTEGER NOT NULL CHECK (position >= 1),
  name TEXT NOT NULL,
  charge_ah REAL NOT NULL CHECK (charge_ah > 0),
  bath INTEGER REFERENCES bath (id),
  PRIMARY KEY (entry, position)
) STRICT;

CREATE TABLE weighing (
  entry INTEGER PRIMARY KEY REFERENCES entry (id),
  what TEXT NOT NULL,
  before_g REAL NOT NULL CHECK (before_g > 0),
  after_g REAL NOT NULL CHECK (after_g > 0),
  balance_g REAL NOT NULL CHECK (balance_g > 0),
  charge_ah REAL CHECK (charge_ah > 0),
  bath INTEGER REFERENCES bath (id),
  job INTEGER REFERENCES job (entry)
) STRICT;

CREATE TABLE coupon (
  entry INTEGER PRIMARY KEY REFERENCES entry (id),
  what TEXT NOT NULL,
  coverage_ah_per_dm2 REAL NOT NULL CHECK (coverage_ah_per_dm2 > 0),
  area_dm2 REAL CHECK (area_dm2 > 0),
  charge_ah REAL CHECK (charge_ah > 0),
  colour TEXT,
  photo TEXT,
  bath INTEGER REFERENCES bath (id)
) STRICT;

CREATE TABLE bath_reading (
  entry INTEGER PRIMARY KEY REFERENCES entry (id),
  bath INTEGER NOT NULL REFERENCES bath (id),
  volume_l REAL CHECK (volume_l > 0),
  metal_g_per_l REAL CHECK (metal_g_per_l >= 0)
) STRICT;

CREATE TABLE addition (
  entry INTEGER NOT NULL REFERENCES bath_reading (entry),
  position INTEGER NOT NULL CHECK (position >= 1),
  what TEXT NOT NULL,
  amount REAL NOT NULL CHECK (amount > 0),
  unit TEXT NOT NULL CHECK (unit IN ('g', 'mL')),
  metal_g REAL NOT NULL CHECK (metal_g >= 0),
  PRIMARY KEY (entry, position)
) STRICT;

CREATE TABLE dose (
  entry INTEGER NOT NULL REFERENCES bath_reading (entry),
  additive TEXT NOT NULL COLLATE NOCASE,
  ml_per_ah REAL NOT NULL CHECK (ml_per_ah > 0),
  PRIMARY KEY (entry, additive)
) STRICT;

CREATE TABLE counter (
  entry INTEGER PRIMARY KEY REFERENCES entry (id),
  bath INTEGER NOT NULL REFERENCES bath (id),
  added_ah REAL CHECK (added_ah > 0),
  reading_ah REAL CHECK (reading_ah >= 0),
  CHECK ((added_ah IS NULL) <> (reading_ah IS NULL))
) STRICT;
