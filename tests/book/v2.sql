-- A book of version 2, as sqlite3's .dump writes it: v1.sql brought up by the program,
-- then what version 2 is new for was entered through it (12 lures on the shelf; trap 1
-- pulled and 1b hung in one step; a day of weather; a farm put away; a lure put away and
-- that taken back), and one row by SQL in each of treatment, dispensers, answer, pick
-- and fruit_check. Never edited once it is released.
PRAGMA application_id = 1297369164;
PRAGMA user_version = 2;
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE trap (
	id INTEGER PRIMARY KEY CHECK (id BETWEEN 1 AND 999999), -- see visit
	farm INTEGER NOT NULL REFERENCES farm,
	block INTEGER NOT NULL REFERENCES block,
	pest INTEGER NOT NULL REFERENCES pest,
	label TEXT NOT NULL CHECK (length(CAST(label AS BLOB)) BETWEEN 1 AND 47),
	lure INTEGER REFERENCES lure,
	card INTEGER REFERENCES card,
	place TEXT CHECK (place IN ('border', 'interior', 'outside')),
	lat REAL CHECK (lat BETWEEN -90 AND 90),
	lon REAL CHECK (lon BETWEEN -180 AND 180),
	driving_order INTEGER NOT NULL CHECK (driving_order BETWEEN 1 AND 1000000),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	UNIQUE (farm, label),
	CHECK ((lat IS NULL) = (lon IS NULL))
) STRICT;
INSERT INTO trap VALUES(1,1,1,1,'1',1,1,'border',NULL,NULL,1,X'0101010101010101010101010101a006','2026-03-30T08:05:00.000Z','Ida');
INSERT INTO trap VALUES(2,1,1,1,'1b',1,1,NULL,NULL,NULL,2,X'9e0942186bc03fa31a8274e1205b59c5','2026-11-28T07:19:30.568Z','Ida');
CREATE TABLE visit (
	id INTEGER PRIMARY KEY CHECK (id BETWEEN 1 AND 109572999999), -- to 2199-12-31
	trap INTEGER NOT NULL REFERENCES trap CHECK (trap = id % 1000000),
	day TEXT NOT NULL CHECK (day IS date(id / 1000000 + 2415020.5)),
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
	new_card INTEGER REFERENCES card, -- NULL: left as it was
	new_lure INTEGER REFERENCES lure,
	stirred INTEGER NOT NULL DEFAULT 0 CHECK (stirred BETWEEN 0 AND 1),
	scout TEXT NOT NULL DEFAULT '' CHECK (
		scout = '' OR length(CAST(scout AS BLOB)) <= 23),
	note TEXT NOT NULL DEFAULT '' CHECK (
		note = '' OR length(CAST(note AS BLOB)) <= 239),
	uid BLOB NOT NULL CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
INSERT INTO visit VALUES(46141000001,1,'2026-05-01','hung',NULL,NULL,NULL,NULL,1,1,0,'Ida','',X'0101010101010101010101010101a007','2026-05-01T08:00:00.000Z','Ida');
INSERT INTO visit VALUES(46148000001,1,'2026-05-08','counted',NULL,14,NULL,NULL,NULL,NULL,0,'Ida','it''s "wet"',X'0101010101010101010101010101a008','2026-05-08T18:00:00.000Z','Office');
INSERT INTO visit VALUES(46155000001,1,'2026-05-15','skipped','weather',NULL,NULL,NULL,NULL,NULL,0,'','',X'0101010101010101010101010101a009','2026-05-15T08:00:00.000Z','Ida');
INSERT INTO visit VALUES(46162000001,1,'2026-05-22','pulled',NULL,NULL,NULL,NULL,NULL,NULL,0,'','',X'6e480b1257d5ae37d10502c481f1099f','2026-11-28T07:19:30.568Z','Ida');
INSERT INTO visit VALUES(46162000002,2,'2026-05-22','hung',NULL,NULL,NULL,NULL,NULL,NULL,0,'','',X'fbcdf3ae7eae3ba5ae4653cca38e9f5c','2026-11-28T07:19:30.568Z','Ida');
CREATE TABLE threshold (
	id INTEGER PRIMARY KEY,
	pest INTEGER NOT NULL REFERENCES pest,
	crop TEXT NOT NULL DEFAULT '' CHECK (length(CAST(crop AS BLOB)) <= 47),
	condition TEXT CHECK (condition IN ('conventional', 'disrupted')),
	lure INTEGER REFERENCES lure,
	place TEXT CHECK (place IN ('border', 'interior', 'outside')),
	farm INTEGER REFERENCES farm,
	block INTEGER REFERENCES block,
	flight INTEGER CHECK (flight BETWEEN 1 AND 9),
	from_md INTEGER CHECK (
		from_md / 100 BETWEEN 1 AND 12 AND from_md % 100 BETWEEN 1 AND 31),
	to_md INTEGER CHECK (
		to_md / 100 BETWEEN 1 AND 12 AND to_md % 100 BETWEEN 1 AND 31),
	until_dd INTEGER CHECK (until_dd BETWEEN 1 AND 99999),
	measure TEXT NOT NULL CHECK (measure IN ('trap-week', 'block-week',
		'trap-night', 'block-night', 'trap-total', 'block-total', 'none')),
	span_kind TEXT CHECK (span_kind IN ('hung', 'biofix', 'flight', 'treatment')),
	span INTEGER CHECK (span BETWEEN 1 AND 366), -- NULL with span_kind, none
	comparator TEXT NOT NULL CHECK (comparator IN ('>=', '>')),
	value_x100 INTEGER NOT NULL CHECK (value_x100 BETWEEN 0 AND 99999999),
	note TEXT NOT NULL DEFAULT '' CHECK (length(CAST(note AS BLOB)) <= 239),
	source TEXT NOT NULL DEFAULT '' CHECK (length(CAST(source AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	CHECK ((from_md IS NULL) = (to_md IS NULL)),
	CHECK (measure NOT IN ('trap-week', 'block-week') OR span BETWEEN 1 AND 8),
	CHECK (measure NOT IN ('trap-night', 'block-night') OR span IS NOT NULL),
	CHECK (span_kind IS NULL OR measure IN ('trap-total', 'block-total')),
	CHECK (measure = 'none' OR (span IS NULL) <> (span_kind IS NULL))
) STRICT;
INSERT INTO threshold VALUES(1,1,'',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'trap-week',NULL,1,'>=',500,'','test',X'0101010101010101010101010101a00a','2026-03-30T08:06:00.000Z','Ida');
CREATE TABLE station (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 47),
	lat REAL CHECK (lat BETWEEN -90 AND 90),
	lon REAL CHECK (lon BETWEEN -180 AND 180),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	CHECK ((lat IS NULL) = (lon IS NULL))
) STRICT;
INSERT INTO station VALUES(1,'Low gauge',NULL,NULL,X'0101010101010101010101010101a00d','2026-03-30T08:08:00.000Z','Ida');
CREATE TABLE weather (
	station INTEGER NOT NULL REFERENCES station,
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	low REAL CHECK (low BETWEEN -150 AND 150),
	high REAL CHECK (high BETWEEN -150 AND 150 AND (low IS NULL OR high >= low)),
	unit TEXT NOT NULL CHECK (unit = 'C' OR unit = 'F'),
	uid BLOB NOT NULL CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	PRIMARY KEY (station, day)
) STRICT, WITHOUT ROWID;
INSERT INTO weather VALUES(1,'2026-05-01',7.5,19.0,'C',X'0101010101010101010101010101a00e','2026-05-02T08:00:00.000Z','Ida');
INSERT INTO weather VALUES(1,'2026-05-02',NULL,64.0,'F',X'0101010101010101010101010101a00f','2026-05-03T08:00:00.000Z','Ida');
INSERT INTO weather VALUES(1,'2026-05-03',6.5,17.0,'C',X'679650f869d88842729ac90b27dd0eae','2026-11-28T07:19:30.569Z','Ida');
CREATE TABLE biofix (
	id INTEGER PRIMARY KEY,
	farm INTEGER NOT NULL REFERENCES farm,
	pest INTEGER NOT NULL REFERENCES pest,
	season INTEGER NOT NULL CHECK (season BETWEEN 1900 AND 2199), -- first year
	day TEXT NOT NULL CHECK (
		day IS date(day, '+0 days')
		AND day BETWEEN '1900-01-01' AND '2199-12-31'),
	rule TEXT NOT NULL DEFAULT '' CHECK (length(CAST(rule AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	UNIQUE (farm, pest, season)
) STRICT;
INSERT INTO biofix VALUES(1,1,1,2026,'2026-05-08','',X'0101010101010101010101010101a010','2026-05-08T18:01:00.000Z','Ida');
CREATE TABLE place ( -- what moths may come from
	id INTEGER PRIMARY KEY,
	farm INTEGER NOT NULL REFERENCES farm,
	name TEXT NOT NULL CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 47),
	kind TEXT NOT NULL CHECK (
		kind IN ('abandoned', 'wild', 'woodlot', 'bins', 'other')),
	lat REAL CHECK (lat BETWEEN -90 AND 90),
	lon REAL CHECK (lon BETWEEN -180 AND 180),
	outline TEXT NOT NULL DEFAULT '', -- "lat lon" pairs
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL,
	UNIQUE (farm, name),
	CHECK ((lat IS NULL) = (lon IS NULL))
) STRICT;
CREATE TABLE setting (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 47),
	value TEXT NOT NULL CHECK (length(CAST(value AS BLOB)) <= 239),
	uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT;
INSERT INTO setting VALUES(1,'scout','Ida',X'0101010101010101010101010101a00c','2026-03-30T08:07:00.000Z','Ida');
CREATE TABLE tombstone (
	uid BLOB PRIMARY KEY CHECK (length(uid) = 16),
	kind TEXT NOT NULL,
	changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
	changed_by TEXT NOT NULL
) STRICT, WITHOUT ROWID;
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
INSERT INTO farm VALUES(1,'Hollow Reach',101,1,2,0,X'0101010101010101010101010101a001','2026-03-30T08:00:00.000Z','Ida');
INSERT INTO farm VALUES(2,'Drumsorrel',701,NULL,NULL,1,X'1e850c7d68655042e824ab8917b21bda','2026-11-28T07:19:30.570Z','Ida');
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
INSERT INTO block VALUES(1,1,'Long rows','apple','','conventional',125,0,X'0101010101010101010101010101a002','2026-03-30T08:01:00.000Z','Ida');
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
INSERT INTO pest VALUES(1,'T1','test moth','','F',50.0,88.0,'sine','horizontal','test','',0,X'0101010101010101010101010101a003','2026-03-30T08:02:00.000Z','Ida');
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
INSERT INTO lure VALUES(1,'T1 test',1,21,14,601,831,'',12,'2026-05-07',3,0,X'0101010101010101010101010101a004','2026-11-28T07:19:30.573Z','Ida');
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
INSERT INTO card VALUES(1,'test card',30,20,30,50,'',NULL,NULL,NULL,0,X'0101010101010101010101010101a005','2026-03-30T08:04:00.000Z','Ida');
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
INSERT INTO treatment VALUES(1,1,NULL,'2026-05-10',NULL,0,NULL,NULL,NULL,NULL,'','','','',NULL,NULL,NULL,'','','',X'0101010101010101010101010101a00b','2026-05-10T08:00:00.000Z','Ida');
INSERT INTO treatment VALUES(2,1,1,'2026-06-01','0202020202020202020202020202B001',1,'2026-06-01T04:30Z','2026-06-01T06:00Z',120,120,'as on the label','0-0','12.5','l',125,12,14,'Ida','0','',X'0202020202020202020202020202b002','2026-06-01T08:00:00.000Z','Ida');
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
INSERT INTO pick VALUES(1,1,'2026-09-03',1,'',X'0202020202020202020202020202b005','2026-06-01T08:00:00.000Z','Ida');
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
INSERT INTO fruit_check VALUES(1,1,1,'2026-07-01','fruit','top',300,1,1,'',X'0202020202020202020202020202b006','2026-07-01T08:00:00.000Z','Ida');
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
INSERT INTO dispensers VALUES(1,1,1,'2026-04-20',NULL,50000,'hand-hung','',X'0202020202020202020202020202b003','2026-04-20T08:00:00.000Z','Ida');
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
INSERT INTO answer VALUES(1,1,1,1,'2026-06-01','2026-06-01','treated','',X'0202020202020202020202020202b004','2026-06-01T08:00:00.000Z','Ida');
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
INSERT INTO history VALUES(1,'visit',X'0101010101010101010101010101a008','insert',NULL,1,'2026-05-08',NULL,1,NULL,'2026-05-08T08:00:00.000Z','Ida');
INSERT INTO history VALUES(2,'visit',X'0101010101010101010101010101a008','update','{"id":46148000001,"trap":1,"day":"2026-05-08","outcome":"counted","reason":null,"count":4,"females":null,"others":null,"new_card":null,"new_lure":null,"stirred":0,"scout":"Ida","note":"it''s \"wet\"","uid":"0101010101010101010101010101A008","changed_at":"2026-05-08T08:00:00.000Z","changed_by":"Ida"}',1,'2026-05-08',NULL,2,NULL,'2026-05-08T18:00:00.000Z','Office');
INSERT INTO history VALUES(3,'lure',X'0101010101010101010101010101a004','update','{"id":1,"name":"T1 test","pest":1,"life_days":21,"hot_days":14,"hot_from":601,"hot_to":831,"source":"","stock":null,"stock_day":null,"reorder_at":null,"retired":0,"uid":"0101010101010101010101010101A004","changed_at":"2026-03-30T08:03:00.000Z","changed_by":"Ida"}',NULL,NULL,NULL,3,NULL,'2026-11-28T07:19:30.567Z','Ida');
INSERT INTO history VALUES(4,'visit',X'6e480b1257d5ae37d10502c481f1099f','insert',NULL,1,'2026-05-22',NULL,4,NULL,'2026-11-28T07:19:30.568Z','Ida');
INSERT INTO history VALUES(5,'trap',X'9e0942186bc03fa31a8274e1205b59c5','insert',NULL,NULL,NULL,NULL,4,NULL,'2026-11-28T07:19:30.568Z','Ida');
INSERT INTO history VALUES(6,'visit',X'fbcdf3ae7eae3ba5ae4653cca38e9f5c','insert',NULL,2,'2026-05-22',NULL,4,NULL,'2026-11-28T07:19:30.568Z','Ida');
INSERT INTO history VALUES(7,'weather',X'679650f869d88842729ac90b27dd0eae','insert',NULL,NULL,'2026-05-03',1,7,NULL,'2026-11-28T07:19:30.569Z','Ida');
INSERT INTO history VALUES(8,'farm',X'1e850c7d68655042e824ab8917b21bda','insert',NULL,NULL,NULL,NULL,8,NULL,'2026-11-28T07:19:30.570Z','Ida');
INSERT INTO history VALUES(9,'lure',X'0101010101010101010101010101a004','update','{"id":1,"name":"T1 test","pest":1,"life_days":21,"hot_days":14,"hot_from":601,"hot_to":831,"source":"","stock":12,"stock_day":"2026-05-07","reorder_at":3,"retired":0,"uid":"0101010101010101010101010101A004","changed_at":"2026-11-28T07:19:30.567Z","changed_by":"Ida"}',NULL,NULL,NULL,9,NULL,'2026-11-28T07:19:30.571Z','Ida');
INSERT INTO history VALUES(10,'lure',X'0101010101010101010101010101a004','update','{"id":1,"name":"T1 test","pest":1,"life_days":21,"hot_days":14,"hot_from":601,"hot_to":831,"source":"","stock":12,"stock_day":"2026-05-07","reorder_at":3,"retired":1,"uid":"0101010101010101010101010101A004","changed_at":"2026-11-28T07:19:30.571Z","changed_by":"Ida"}',NULL,NULL,NULL,10,9,'2026-11-28T07:19:30.573Z','Ida');
INSERT INTO history VALUES(11,'treatment',X'0202020202020202020202020202b002','insert',NULL,NULL,NULL,NULL,NULL,NULL,'2026-06-01T08:00:00.000Z','Ida');
INSERT INTO history VALUES(12,'dispensers',X'0202020202020202020202020202b003','insert',NULL,NULL,NULL,NULL,NULL,NULL,'2026-04-20T08:00:00.000Z','Ida');
INSERT INTO history VALUES(13,'answer',X'0202020202020202020202020202b004','insert',NULL,NULL,NULL,NULL,NULL,NULL,'2026-06-01T08:00:00.000Z','Ida');
INSERT INTO history VALUES(14,'pick',X'0202020202020202020202020202b005','insert',NULL,NULL,NULL,NULL,NULL,NULL,'2026-06-01T08:00:00.000Z','Ida');
INSERT INTO history VALUES(15,'fruit_check',X'0202020202020202020202020202b006','insert',NULL,NULL,NULL,NULL,NULL,NULL,'2026-07-01T08:00:00.000Z','Ida');
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('history',15);
CREATE INDEX trap_block ON trap (block);
CREATE TRIGGER trap_changed AFTER UPDATE ON trap BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('trap', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'block', OLD.block,
		'pest', OLD.pest, 'label', OLD.label, 'lure', OLD.lure,
		'card', OLD.card, 'place', OLD.place, 'lat', OLD.lat,
		'lon', OLD.lon, 'driving_order', OLD.driving_order,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by));
END;
CREATE TRIGGER trap_removed AFTER DELETE ON trap BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'trap', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'trap', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'block', OLD.block,
		'pest', OLD.pest, 'label', OLD.label, 'lure', OLD.lure,
		'card', OLD.card, 'place', OLD.place, 'lat', OLD.lat,
		'lon', OLD.lon, 'driving_order', OLD.driving_order,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER visit_changed AFTER UPDATE ON visit BEGIN
	INSERT INTO history (kind, uid, op, at, by, trap, day, old)
	VALUES ('visit', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		OLD.trap, OLD.day,
		json_object(
		'id', OLD.id, 'trap', OLD.trap, 'day', OLD.day,
		'outcome', OLD.outcome, 'reason', OLD.reason,
		'count', OLD.count, 'females', OLD.females,
		'others', OLD.others, 'new_card', OLD.new_card,
		'new_lure', OLD.new_lure, 'stirred', OLD.stirred,
		'scout', OLD.scout, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER visit_removed AFTER DELETE ON visit BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'visit', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, trap, day, old)
	SELECT 'visit', OLD.uid, 'delete', changed_at, changed_by, OLD.trap, OLD.day,
		json_object(
		'id', OLD.id, 'trap', OLD.trap, 'day', OLD.day,
		'outcome', OLD.outcome, 'reason', OLD.reason,
		'count', OLD.count, 'females', OLD.females,
		'others', OLD.others, 'new_card', OLD.new_card,
		'new_lure', OLD.new_lure, 'stirred', OLD.stirred,
		'scout', OLD.scout, 'note', OLD.note, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER threshold_changed AFTER UPDATE ON threshold BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('threshold', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'pest', OLD.pest, 'crop', OLD.crop,
		'condition', OLD.condition, 'lure', OLD.lure,
		'place', OLD.place, 'farm', OLD.farm, 'block', OLD.block,
		'flight', OLD.flight, 'from_md', OLD.from_md,
		'to_md', OLD.to_md, 'until_dd', OLD.until_dd,
		'measure', OLD.measure, 'span_kind', OLD.span_kind,
		'span', OLD.span, 'comparator', OLD.comparator,
		'value_x100', OLD.value_x100, 'note', OLD.note,
		'source', OLD.source, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER threshold_removed AFTER DELETE ON threshold BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'threshold', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'threshold', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'pest', OLD.pest, 'crop', OLD.crop,
		'condition', OLD.condition, 'lure', OLD.lure,
		'place', OLD.place, 'farm', OLD.farm, 'block', OLD.block,
		'flight', OLD.flight, 'from_md', OLD.from_md,
		'to_md', OLD.to_md, 'until_dd', OLD.until_dd,
		'measure', OLD.measure, 'span_kind', OLD.span_kind,
		'span', OLD.span, 'comparator', OLD.comparator,
		'value_x100', OLD.value_x100, 'note', OLD.note,
		'source', OLD.source, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER station_changed AFTER UPDATE ON station BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('station', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'lat', OLD.lat, 'lon', OLD.lon,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by));
END;
CREATE TRIGGER station_removed AFTER DELETE ON station BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'station', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'station', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'lat', OLD.lat, 'lon', OLD.lon,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER biofix_changed AFTER UPDATE ON biofix BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('biofix', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'pest', OLD.pest,
		'season', OLD.season, 'day', OLD.day, 'rule', OLD.rule,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by));
END;
CREATE TRIGGER biofix_removed AFTER DELETE ON biofix BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'biofix', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'biofix', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'pest', OLD.pest,
		'season', OLD.season, 'day', OLD.day, 'rule', OLD.rule,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER place_changed AFTER UPDATE ON place BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('place', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'name', OLD.name,
		'kind', OLD.kind, 'lat', OLD.lat, 'lon', OLD.lon,
		'outline', OLD.outline, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by));
END;
CREATE TRIGGER place_removed AFTER DELETE ON place BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'place', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'place', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'farm', OLD.farm, 'name', OLD.name,
		'kind', OLD.kind, 'lat', OLD.lat, 'lon', OLD.lon,
		'outline', OLD.outline, 'uid', hex(OLD.uid),
		'changed_at', OLD.changed_at, 'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE TRIGGER setting_changed AFTER UPDATE ON setting BEGIN
	INSERT INTO history (kind, uid, op, at, by, old)
	VALUES ('setting', OLD.uid, 'update', NEW.changed_at, NEW.changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'value', OLD.value,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by));
END;
CREATE TRIGGER setting_removed AFTER DELETE ON setting BEGIN
	INSERT OR IGNORE INTO tombstone (uid, kind, changed_at, changed_by)
	VALUES (OLD.uid, 'setting', strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), '');
	INSERT INTO history (kind, uid, op, at, by, old)
	SELECT 'setting', OLD.uid, 'delete', changed_at, changed_by,
		json_object(
		'id', OLD.id, 'name', OLD.name, 'value', OLD.value,
		'uid', hex(OLD.uid), 'changed_at', OLD.changed_at,
		'changed_by', OLD.changed_by)
	FROM tombstone WHERE uid = OLD.uid;
END;
CREATE INDEX treatment_block ON treatment (block, day);
CREATE INDEX pick_block ON pick (block, day);
CREATE INDEX fruit_check_block ON fruit_check (block, day);
CREATE INDEX dispensers_block ON dispensers (block, day);
CREATE INDEX answer_block ON answer (block, day);
CREATE INDEX history_visit ON history (trap, day) WHERE trap IS NOT NULL;
CREATE INDEX history_row ON history (uid) WHERE trap IS NULL;
CREATE INDEX history_undoes ON history (undoes) WHERE undoes IS NOT NULL;
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
COMMIT;
