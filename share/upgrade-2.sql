-- From version 1 to version 2: what is put away, what is on the shelf, and every entry
-- as a step that can be taken back. Run with foreign keys off: each table that changes
-- is made anew under its name, and the rows keep their ids. Released: never edited.
CREATE TABLE old_farm AS SELECT * FROM farm;
DROP TABLE farm;
CREATE TABLE farm (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 47),
	season_start INTEGER NOT NULL DEFAULT 101 CHECK (
		season_start / 100 BETWEEN 1 AND 12
		AND season_start % 100 BETWEEN 1 AND 31),
	station INTEGER REFERENCES station, -- NULL: the only one there is
	run_weekday INTEGER CHECK (run_weekday BETWEEN 1 AND 7),
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired BETWEEN 0 AND 1),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
INSERT INTO farm (
	id, name, season_start, station, run_weekday, uid, changed_at,
	changed_by)
SELECT
	id, name, season_start, station, run_weekday, uid, changed_at,
	changed_by
FROM old_farm;
DROP TABLE old_farm;

CREATE TABLE old_block AS SELECT * FROM block;
DROP TABLE block;
CREATE TABLE block (
	id INTEGER PRIMARY KEY,
	farm INTEGER NOT NULL REFERENCES farm,
	name TEXT NOT NULL CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 47),
	crop TEXT NOT NULL DEFAULT '' CHECK (length(CAST(crop AS BLOB)) <= 47),
	variety TEXT NOT NULL DEFAULT '' CHECK (length(CAST(variety AS BLOB)) <= 47),
	condition TEXT CHECK (condition IN ('conventional', 'disrupted')),
	area_x100 INTEGER CHECK (area_x100 BETWEEN 0 AND 100000000), -- hectares
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired BETWEEN 0 AND 1),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	UNIQUE (farm, name)
) STRICT;
INSERT INTO block (
	id, farm, name, crop, variety, condition, area_x100, uid, changed_at,
	changed_by)
SELECT
	id, farm, name, crop, variety, condition, area_x100, uid, changed_at,
	changed_by
FROM old_block;
DROP TABLE old_block;

CREATE TABLE old_pest AS SELECT * FROM pest;
DROP TABLE pest;
CREATE TABLE pest (
	id INTEGER PRIMARY KEY,
	code TEXT NOT NULL UNIQUE CHECK (length(CAST(code AS BLOB)) BETWEEN 1 AND 11),
	name TEXT NOT NULL DEFAULT '' CHECK (length(CAST(name AS BLOB)) <= 47),
	latin TEXT NOT NULL DEFAULT '' CHECK (length(CAST(latin AS BLOB)) <= 47),
	dd_unit TEXT CHECK (dd_unit IN ('C', 'F')), -- NULL: no degree-days
	dd_base REAL CHECK (dd_base BETWEEN -60 AND 150),
	dd_cap REAL CHECK (dd_cap BETWEEN -60 AND 150 AND dd_cap > dd_base),
	dd_method TEXT CHECK (dd_method IN ('average', 'average-raised',
		'average-clamped', 'average-capped', 'triangle', 'double-triangle',
		'sine', 'double-sine')),
	dd_cutoff TEXT CHECK (
		dd_cutoff IN ('none', 'horizontal', 'intermediate', 'vertical')),
	dd_source TEXT NOT NULL DEFAULT '' CHECK (
		length(CAST(dd_source AS BLOB)) <= 239),
	biofix_rule TEXT NOT NULL DEFAULT '' CHECK (
		length(CAST(biofix_rule AS BLOB)) <= 23),
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired BETWEEN 0 AND 1),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	CHECK ((dd_unit IS NULL) = (dd_base IS NULL)),
	CHECK ((dd_unit IS NULL) = (dd_method IS NULL)),
	CHECK ((dd_unit IS NULL) = (dd_cutoff IS NULL)),
	CHECK (dd_unit IS NOT NULL OR dd_cap IS NULL)
) STRICT;
INSERT INTO pest (
	id, code, name, latin, dd_unit, dd_base, dd_cap, dd_method, dd_cutoff,
	dd_source, biofix_rule, uid, changed_at, changed_by)
SELECT
	id, code, name, latin, dd_unit, dd_base, dd_cap, dd_method, dd_cutoff,
	dd_source, biofix_rule, uid, changed_at, changed_by
FROM old_pest;
DROP TABLE old_pest;

CREATE TABLE old_lure AS SELECT * FROM lure;
DROP TABLE lure;
CREATE TABLE lure (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 47),
	pest INTEGER REFERENCES pest, -- NULL: of no single pest
	life_days INTEGER NOT NULL CHECK (life_days BETWEEN 1 AND 366),
	hot_days INTEGER CHECK (hot_days BETWEEN 1 AND life_days),
	hot_from INTEGER CHECK (
		hot_from / 100 BETWEEN 1 AND 12 AND hot_from % 100 BETWEEN 1 AND 31),
	hot_to INTEGER CHECK (
		hot_to / 100 BETWEEN 1 AND 12 AND hot_to % 100 BETWEEN 1 AND 31),
	source TEXT NOT NULL DEFAULT '' CHECK (length(CAST(source AS BLOB)) <= 239),
	stock INTEGER CHECK (stock BETWEEN 0 AND 9999), -- NULL: not kept
	stock_day TEXT CHECK (
		stock_day IS date(stock_day, '+0 days')
		AND stock_day BETWEEN '1900-01-01' AND '2199-12-31'),
	reorder_at INTEGER CHECK (reorder_at BETWEEN 0 AND 9999),
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired BETWEEN 0 AND 1),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	CHECK ((hot_days IS NULL) = (hot_from IS NULL)),
	CHECK ((hot_days IS NULL) = (hot_to IS NULL)),
	CHECK ((stock IS NULL) = (stock_day IS NULL))
) STRICT;
INSERT INTO lure (
	id, name, pest, life_days, hot_days, hot_from, hot_to, source, uid,
	changed_at, changed_by)
SELECT
	id, name, pest, life_days, hot_days, hot_from, hot_to, source, uid,
	changed_at, changed_by
FROM old_lure;
DROP TABLE old_lure;

CREATE TABLE old_card AS SELECT * FROM card;
DROP TABLE card;
CREATE TABLE card (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 47),
	life_days INTEGER NOT NULL CHECK (life_days BETWEEN 1 AND 366),
	stir_at INTEGER NOT NULL CHECK (stir_at BETWEEN 1 AND change_at),
	change_at INTEGER NOT NULL CHECK (change_at BETWEEN 1 AND floor_at),
	floor_at INTEGER NOT NULL CHECK (floor_at BETWEEN 1 AND 9999),
	source TEXT NOT NULL DEFAULT '' CHECK (length(CAST(source AS BLOB)) <= 239),
	stock INTEGER CHECK (stock BETWEEN 0 AND 9999), -- NULL: not kept
	stock_day TEXT CHECK (
		stock_day IS date(stock_day, '+0 days')
		AND stock_day BETWEEN '1900-01-01' AND '2199-12-31'),
	reorder_at INTEGER CHECK (reorder_at BETWEEN 0 AND 9999),
	retired INTEGER NOT NULL DEFAULT 0 CHECK (retired BETWEEN 0 AND 1),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	CHECK ((stock IS NULL) = (stock_day IS NULL))
) STRICT;
INSERT INTO card (
	id, name, life_days, stir_at, change_at, floor_at, source, uid,
	changed_at, changed_by)
SELECT
	id, name, life_days, stir_at, change_at, floor_at, source, uid,
	changed_at, changed_by
FROM old_card;
DROP TABLE old_card;

CREATE TABLE old_treatment AS SELECT * FROM treatment;
DROP TABLE treatment;
CREATE TABLE treatment (
	id INTEGER PRIMARY KEY,
	block INTEGER NOT NULL REFERENCES block,
	pest INTEGER REFERENCES pest, -- NULL: all
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	job TEXT CHECK (length(CAST(job AS BLOB)) BETWEEN 1 AND 47), -- NULL: alone
	border INTEGER NOT NULL DEFAULT 0 CHECK (border BETWEEN 0 AND 1), -- and no more
	started_at TEXT CHECK ( -- UTC, as the end
		started_at IS strftime('%Y-%m-%dT%H:%MZ', started_at, '+0 days')),
	ended_at TEXT CHECK (
		ended_at IS strftime('%Y-%m-%dT%H:%MZ', ended_at, '+0 days')
		AND (started_at IS NULL OR ended_at >= started_at)),
	-- what local clocks were ahead of UTC then
	started_east INTEGER CHECK (started_east BETWEEN -840 AND 840),
	ended_east INTEGER CHECK (ended_east BETWEEN -840 AND 840),
	product TEXT NOT NULL DEFAULT '',
	registration TEXT NOT NULL DEFAULT '',
	amount TEXT NOT NULL DEFAULT '', -- in total, as typed
	unit TEXT NOT NULL DEFAULT '' CHECK (length(CAST(unit AS BLOB)) <= 47),
	area_x100 INTEGER CHECK (area_x100 BETWEEN 0 AND 100000000), -- hectares
	rei_hours INTEGER CHECK (rei_hours BETWEEN 0 AND 8784),
	phi_days INTEGER CHECK (phi_days BETWEEN 0 AND 366),
	applicator TEXT NOT NULL DEFAULT '',
	certificate TEXT NOT NULL DEFAULT '' CHECK (
		length(CAST(certificate AS BLOB)) <= 47),
	note TEXT NOT NULL DEFAULT '' CHECK (length(CAST(note AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	CHECK ((started_at IS NULL) = (started_east IS NULL)),
	CHECK ((ended_at IS NULL) = (ended_east IS NULL))
) STRICT;
CREATE INDEX treatment_block ON treatment (block, day);
INSERT INTO treatment (
	id, block, pest, day, ended_at, ended_east, product, registration, amount,
	rei_hours, phi_days, applicator, note, uid, changed_at, changed_by)
SELECT -- when it ended was no more than typed before: it is taken as UTC
	id, block, pest, day, strftime('%Y-%m-%dT%H:%MZ', ended_at, '+0 days'),
	iif(strftime('%Y-%m-%dT%H:%MZ', ended_at, '+0 days') IS NULL, NULL, 0), product,
	registration, amount, rei_hours, phi_days, applicator, note, uid,
	changed_at, changed_by
FROM old_treatment;
DROP TABLE old_treatment;

CREATE TABLE old_pick AS SELECT * FROM pick;
DROP TABLE pick;
CREATE TABLE pick (
	id INTEGER PRIMARY KEY,
	block INTEGER NOT NULL REFERENCES block,
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	planned INTEGER NOT NULL DEFAULT 0 CHECK (planned BETWEEN 0 AND 1),
	note TEXT NOT NULL DEFAULT '' CHECK (length(CAST(note AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
CREATE INDEX pick_block ON pick (block, day);
INSERT INTO pick (
	id, block, day, note, uid, changed_at, changed_by)
SELECT
	id, block, day, note, uid, changed_at, changed_by
FROM old_pick;
DROP TABLE old_pick;

CREATE TABLE old_fruit_check AS SELECT * FROM fruit_check;
DROP TABLE fruit_check;
CREATE TABLE fruit_check (
	id INTEGER PRIMARY KEY,
	block INTEGER NOT NULL REFERENCES block,
	pest INTEGER REFERENCES pest,
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	part TEXT NOT NULL DEFAULT 'fruit' CHECK (part IN ('fruit', 'shoots')),
	tree TEXT CHECK (tree IN ('top', 'middle', 'low', 'ground')), -- NULL: all over
	looked_at INTEGER NOT NULL CHECK (looked_at BETWEEN 1 AND 99999),
	stung INTEGER CHECK (stung >= 0), -- NULL: not told apart, all are in entered
	entered INTEGER NOT NULL CHECK (
		entered >= 0 AND entered + coalesce(stung, 0) <= looked_at),
	note TEXT NOT NULL DEFAULT '' CHECK (length(CAST(note AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
CREATE INDEX fruit_check_block ON fruit_check (block, day);
INSERT INTO fruit_check (
	id, block, pest, day, looked_at, entered, note, uid, changed_at, changed_by)
SELECT
	id, block, pest, day, looked_at, hurt, note, uid, changed_at, changed_by
FROM old_fruit_check;
DROP TABLE old_fruit_check;

CREATE TABLE dispensers ( -- of mating disruption, up in a block
	id INTEGER PRIMARY KEY,
	block INTEGER NOT NULL REFERENCES block,
	pest INTEGER REFERENCES pest, -- NULL: all
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	until TEXT CHECK (
		until IS date(until, '+0 days') AND until BETWEEN day AND '2199-12-31'),
	per_ha_x100 INTEGER CHECK (per_ha_x100 BETWEEN 1 AND 9999999),
	type TEXT NOT NULL DEFAULT '' CHECK (length(CAST(type AS BLOB)) <= 47),
	note TEXT NOT NULL DEFAULT '' CHECK (length(CAST(note AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
CREATE INDEX dispensers_block ON dispensers (block, day);

CREATE TABLE answer ( -- what was decided when a catch was over its threshold
	id INTEGER PRIMARY KEY,
	block INTEGER NOT NULL REFERENCES block,
	trap INTEGER REFERENCES trap, -- NULL: the block as a whole
	pest INTEGER NOT NULL REFERENCES pest,
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	decided TEXT NOT NULL CHECK (
		decided IS date(decided, '+0 days')
		AND decided BETWEEN day AND '2199-12-31'),
	did TEXT NOT NULL CHECK (did IN ('looked', 'treated', 'left')),
	note TEXT NOT NULL DEFAULT '' CHECK (length(CAST(note AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
CREATE INDEX answer_block ON answer (block, day);

-- Changes of one time and author were made together.
CREATE TABLE old_history AS SELECT * FROM history;
DROP TABLE history;
CREATE TABLE history (
	id INTEGER PRIMARY KEY AUTOINCREMENT, -- in the order of the changes
	kind TEXT NOT NULL, -- the table
	uid BLOB NOT NULL CHECK (length(uid) = 16),
	op TEXT NOT NULL CHECK (op IN ('insert', 'update', 'delete')),
	old TEXT CHECK ((old IS NULL) = (op = 'insert')), -- the row before, as JSON
	trap INTEGER, day TEXT, -- of a visit
	station INTEGER, -- of a day of weather, with its day
	step INTEGER, -- the same for all of one transaction; NULL: of another program
	undoes INTEGER, -- the change that this one took back
	at TEXT NOT NULL CHECK (length(at) = 24),
	by TEXT NOT NULL
) STRICT;
CREATE INDEX history_visit ON history (trap, day) WHERE trap IS NOT NULL;
CREATE INDEX history_row ON history (uid) WHERE trap IS NULL;
CREATE INDEX history_undoes ON history (undoes) WHERE undoes IS NOT NULL;
INSERT INTO history (
	id, kind, uid, op, old, trap, day, station, step, undoes, at, by)
SELECT
	id, kind, uid, op, old, trap,
	CASE WHEN kind = 'weather' AND json_valid(old)
		THEN json_extract(old, '$.day') ELSE day END,
	CASE WHEN kind = 'weather' AND json_valid(old)
		THEN json_extract(old, '$.station') END,
	min(id) OVER (PARTITION BY at, by), undoes, at, by
FROM old_history;
DROP TABLE old_history;

CREATE TRIGGER farm_added AFTER INSERT ON farm BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('farm', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER farm_changed AFTER UPDATE ON farm BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('farm', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'season_start', OLD.season_start,
		'station', OLD.station, 'run_weekday', OLD.run_weekday,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER farm_removed AFTER DELETE ON farm BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'farm', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'farm', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'season_start', OLD.season_start,
		'station', OLD.station, 'run_weekday', OLD.run_weekday,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER block_added AFTER INSERT ON block BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('block', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER block_changed AFTER UPDATE ON block BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('block', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'name', OLD.name,
		'crop', OLD.crop, 'variety', OLD.variety,
		'condition', OLD.condition, 'area_x100', OLD.area_x100,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER block_removed AFTER DELETE ON block BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'block', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'block', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'name', OLD.name,
		'crop', OLD.crop, 'variety', OLD.variety,
		'condition', OLD.condition, 'area_x100', OLD.area_x100,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER pest_added AFTER INSERT ON pest BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('pest', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER pest_changed AFTER UPDATE ON pest BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('pest', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'code', OLD.code, 'name', OLD.name,
		'latin', OLD.latin, 'dd_unit', OLD.dd_unit,
		'dd_base', OLD.dd_base, 'dd_cap', OLD.dd_cap,
		'dd_method', OLD.dd_method, 'dd_cutoff', OLD.dd_cutoff,
		'dd_source', OLD.dd_source, 'biofix_rule', OLD.biofix_rule,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER pest_removed AFTER DELETE ON pest BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'pest', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'pest', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'code', OLD.code, 'name', OLD.name,
		'latin', OLD.latin, 'dd_unit', OLD.dd_unit,
		'dd_base', OLD.dd_base, 'dd_cap', OLD.dd_cap,
		'dd_method', OLD.dd_method, 'dd_cutoff', OLD.dd_cutoff,
		'dd_source', OLD.dd_source, 'biofix_rule', OLD.biofix_rule,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER lure_added AFTER INSERT ON lure BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('lure', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER lure_changed AFTER UPDATE ON lure BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('lure', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'pest', OLD.pest,
		'life_days', OLD.life_days, 'hot_days', OLD.hot_days,
		'hot_from', OLD.hot_from, 'hot_to', OLD.hot_to,
		'source', OLD.source, 'stock', OLD.stock,
		'stock_day', OLD.stock_day, 'reorder_at', OLD.reorder_at,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER lure_removed AFTER DELETE ON lure BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'lure', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'lure', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'pest', OLD.pest,
		'life_days', OLD.life_days, 'hot_days', OLD.hot_days,
		'hot_from', OLD.hot_from, 'hot_to', OLD.hot_to,
		'source', OLD.source, 'stock', OLD.stock,
		'stock_day', OLD.stock_day, 'reorder_at', OLD.reorder_at,
		'retired', OLD.retired, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER card_added AFTER INSERT ON card BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('card', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER card_changed AFTER UPDATE ON card BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('card', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'life_days', OLD.life_days,
		'stir_at', OLD.stir_at, 'change_at', OLD.change_at,
		'floor_at', OLD.floor_at, 'source', OLD.source,
		'stock', OLD.stock, 'stock_day', OLD.stock_day,
		'reorder_at', OLD.reorder_at, 'retired', OLD.retired,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by));
END;
CREATE TRIGGER card_removed AFTER DELETE ON card BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'card', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'card', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'life_days', OLD.life_days,
		'stir_at', OLD.stir_at, 'change_at', OLD.change_at,
		'floor_at', OLD.floor_at, 'source', OLD.source,
		'stock', OLD.stock, 'stock_day', OLD.stock_day,
		'reorder_at', OLD.reorder_at, 'retired', OLD.retired,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER trap_added AFTER INSERT ON trap BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('trap', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER threshold_added AFTER INSERT ON threshold BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('threshold', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER station_added AFTER INSERT ON station BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('station', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
DROP TRIGGER weather_changed;
DROP TRIGGER weather_removed;
CREATE TRIGGER weather_changed AFTER UPDATE ON weather BEGIN
	INSERT INTO history (kind, uid, op, at, by, station, day, old)
	VALUES ('weather', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		OLD.station, OLD.day,
		json_object(
		'station', OLD.station, 'day', OLD.day, 'low', OLD.low,
		'high', OLD.high, 'unit', OLD.unit, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER weather_removed AFTER DELETE ON weather BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'weather', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, station, day, old)
	SELECT 'weather', OLD.uid, 'delete', changed_at, changed_by,
		OLD.station, OLD.day,
		json_object(
		'station', OLD.station, 'day', OLD.day, 'low', OLD.low,
		'high', OLD.high, 'unit', OLD.unit, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER biofix_added AFTER INSERT ON biofix BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('biofix', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER place_added AFTER INSERT ON place BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('place', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER treatment_added AFTER INSERT ON treatment BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('treatment', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER treatment_changed AFTER UPDATE ON treatment BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('treatment', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'pest', OLD.pest,
		'day', OLD.day, 'job', OLD.job, 'border', OLD.border,
		'started_at', OLD.started_at, 'ended_at', OLD.ended_at,
		'started_east', OLD.started_east, 'ended_east', OLD.ended_east,
		'product', OLD.product,
		'registration', OLD.registration, 'amount', OLD.amount,
		'unit', OLD.unit, 'area_x100', OLD.area_x100,
		'rei_hours', OLD.rei_hours, 'phi_days', OLD.phi_days,
		'applicator', OLD.applicator, 'certificate', OLD.certificate,
		'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER treatment_removed AFTER DELETE ON treatment BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'treatment', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'treatment', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'pest', OLD.pest,
		'day', OLD.day, 'job', OLD.job, 'border', OLD.border,
		'started_at', OLD.started_at, 'ended_at', OLD.ended_at,
		'started_east', OLD.started_east, 'ended_east', OLD.ended_east,
		'product', OLD.product,
		'registration', OLD.registration, 'amount', OLD.amount,
		'unit', OLD.unit, 'area_x100', OLD.area_x100,
		'rei_hours', OLD.rei_hours, 'phi_days', OLD.phi_days,
		'applicator', OLD.applicator, 'certificate', OLD.certificate,
		'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER dispensers_added AFTER INSERT ON dispensers BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('dispensers', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER dispensers_changed AFTER UPDATE ON dispensers BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('dispensers', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'pest', OLD.pest,
		'day', OLD.day, 'until', OLD.until,
		'per_ha_x100', OLD.per_ha_x100, 'type', OLD.type,
		'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER dispensers_removed AFTER DELETE ON dispensers BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'dispensers', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'dispensers', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'pest', OLD.pest,
		'day', OLD.day, 'until', OLD.until,
		'per_ha_x100', OLD.per_ha_x100, 'type', OLD.type,
		'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER answer_added AFTER INSERT ON answer BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('answer', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER answer_changed AFTER UPDATE ON answer BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('answer', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'trap', OLD.trap,
		'pest', OLD.pest, 'day', OLD.day, 'decided', OLD.decided,
		'did', OLD.did, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER answer_removed AFTER DELETE ON answer BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'answer', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'answer', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'trap', OLD.trap,
		'pest', OLD.pest, 'day', OLD.day, 'decided', OLD.decided,
		'did', OLD.did, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER pick_added AFTER INSERT ON pick BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('pick', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER pick_changed AFTER UPDATE ON pick BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('pick', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'day', OLD.day,
		'planned', OLD.planned, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER pick_removed AFTER DELETE ON pick BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'pick', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'pick', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'day', OLD.day,
		'planned', OLD.planned, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER fruit_check_added AFTER INSERT ON fruit_check BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('fruit_check', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;
CREATE TRIGGER fruit_check_changed AFTER UPDATE ON fruit_check BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('fruit_check', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'pest', OLD.pest,
		'day', OLD.day, 'part', OLD.part, 'tree', OLD.tree,
		'looked_at', OLD.looked_at, 'stung', OLD.stung,
		'entered', OLD.entered, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER fruit_check_removed AFTER DELETE ON fruit_check BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'fruit_check', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'fruit_check', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'block', OLD.block, 'pest', OLD.pest,
		'day', OLD.day, 'part', OLD.part, 'tree', OLD.tree,
		'looked_at', OLD.looked_at, 'stung', OLD.stung,
		'entered', OLD.entered, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER setting_added AFTER INSERT ON setting BEGIN
	INSERT INTO history (kind, uid, op, at, by)
	VALUES ('setting', NEW.uid, 'insert', NEW.changed_at, NEW.changed_by);
END;

-- What merging with other books needs to come out the same in whatever order they are
-- merged; see "How books are merged" in DEVELOPERS.md.

-- Under which key each row was first put in, so that books which typed the same farm
-- know it as one: `of` is the uid that the book keeps for it.
CREATE TABLE origin (
	uid BLOB PRIMARY KEY CHECK (length(uid) = 16),
	kind TEXT NOT NULL, -- the table
	of BLOB NOT NULL CHECK (length(of) = 16),
	ref1 BLOB, ref2 BLOB, ref3 BLOB, ref4 BLOB, -- uids of what the key refers to
	words TEXT NOT NULL,
	turn INTEGER NOT NULL CHECK (turn >= 1) -- of the rows that had the key in a book
) STRICT, WITHOUT ROWID;

-- Visits that a merge found beside the one in `visit`: the same trap and day, put in
-- or changed by somebody who did not know of it. Nothing is left out of here until a
-- person settles which one holds.
CREATE TABLE rival (
	id INTEGER PRIMARY KEY,
	trap INTEGER NOT NULL REFERENCES trap,
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	outcome TEXT NOT NULL CHECK (
		outcome = 'counted' AND count IS NOT NULL
		OR outcome = 'skipped' AND count IS NULL
		OR outcome = 'floor' AND count IS NOT NULL
		OR outcome = 'hung' AND count IS NULL
		OR outcome = 'missing' AND count IS NULL
		OR outcome = 'spoiled' OR outcome = 'pulled'),
	reason TEXT CHECK (reason IS NULL
		OR outcome = 'skipped'
			AND reason IN ('re-entry', 'weather', 'time', 'other')
		OR outcome = 'spoiled'
			AND reason IN ('down', 'card lost', 'lure missing', 'blocked')),
	count INTEGER CHECK (count BETWEEN 0 AND 9999),
	females INTEGER CHECK (females BETWEEN 0 AND 9999),
	others INTEGER CHECK (others BETWEEN 0 AND 9999),
	new_card INTEGER REFERENCES card,
	new_lure INTEGER REFERENCES lure,
	stirred INTEGER NOT NULL DEFAULT 0 CHECK (stirred BETWEEN 0 AND 1),
	scout TEXT NOT NULL DEFAULT '' CHECK (length(CAST(scout AS BLOB)) <= 23),
	note TEXT NOT NULL DEFAULT '' CHECK (length(CAST(note AS BLOB)) <= 239),
	uid BLOB NOT NULL CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
CREATE INDEX rival_trap ON rival (trap, day);

-- Rows that are not in their tables: removed in one book, changed in another.
CREATE TABLE aside (
	uid BLOB PRIMARY KEY CHECK (length(uid) = 16),
	kind TEXT NOT NULL,
	old TEXT NOT NULL, -- as JSON, references as uids
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Two rows with one name: which one a merge shows under another, so that both stay.
CREATE TABLE renamed (
	uid BLOB NOT NULL CHECK (length(uid) = 16),
	field TEXT NOT NULL,
	base TEXT NOT NULL, -- what was typed
	shown TEXT NOT NULL,
	PRIMARY KEY (uid, field)
) STRICT, WITHOUT ROWID;

CREATE TABLE merged ( -- what came in, and the copy of the book as it was before
	id INTEGER PRIMARY KEY AUTOINCREMENT,
	file TEXT NOT NULL,
	kept TEXT NOT NULL, -- a file beside the book; '' for one in memory
	writes INTEGER NOT NULL, -- the file's count of changes when it was done
	at TEXT NOT NULL CHECK (length(at) = 24),
	by TEXT NOT NULL
) STRICT;
