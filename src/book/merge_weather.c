/* merge_weather.c - days of weather: a day is the station's and the date's, and the
 * later entry holds; the other one goes into the history. */
#include "merge_parts.h"

/* When which days were removed. The station may be gone since, and its number given to
 * another one: it was the one that was removed first thereafter. */
static void find_cleared(struct merge *m, const char *side)
{
	merge_run(m,
		"INSERT INTO temp.m_clear SELECT p.id, c.day, c.at, c.by FROM (SELECT "
		"coalesce((SELECT g.uid FROM %s.history g WHERE g.kind = 'station' AND "
		"g.op = 'delete' AND g.trap IS NULL AND g.id > h.id AND "
		"json_extract(g.old, '$.id') = h.station ORDER BY g.id LIMIT 1), "
		"(SELECT s.uid FROM %s.station s WHERE s.id = h.station)) AS station, "
		"h.day AS day, d.changed_at AS at, d.changed_by AS by FROM "
		"%s.tombstone d JOIN %s.history h ON h.uid = d.uid AND h.trap IS NULL "
		"AND h.kind = 'weather' AND h.op = 'delete' WHERE d.kind = 'weather' "
		"AND h.day IS NOT NULL) c JOIN temp.m_canon n ON n.uid = c.station "
		"JOIN temp.m_place p ON p.rep = n.rep WHERE 1 ON CONFLICT (station, "
		"day) DO UPDATE SET at = excluded.at, by = excluded.by WHERE "
		"(excluded.at, excluded.by) > (at, by)",
		side, side, side, side);
}

/* Days of the other book that this one does not have, or has from an earlier time. */
static void find_later(struct merge *m)
{
	merge_run(m,
		"CREATE TEMP TABLE m_later AS SELECT s.ours AS station, o.day AS day, "
		"o.low, o.high, o.unit, o.uid, o.changed_at, o.changed_by, w.day IS "
		"NOT NULL AS had FROM other.weather o JOIN temp.m_map s ON s.kind = "
		"'station' AND s.theirs = o.station LEFT JOIN main.weather w ON "
		"w.station = s.ours AND w.day = o.day LEFT JOIN temp.m_clear d ON "
		"d.station = s.ours AND d.day = o.day WHERE (w.day IS NULL OR "
		"(o.changed_at, o.changed_by, o.unit, coalesce(o.low, -999), "
		"coalesce(o.high, -999), o.uid) > (w.changed_at, w.changed_by, w.unit, "
		"coalesce(w.low, -999), coalesce(w.high, -999), w.uid)) AND (d.day IS "
		"NULL OR (o.changed_at, o.changed_by) > (d.at, d.by))");
}

/* Rows that say something else than what holds now. */
static void find_lost(struct merge *m, const char *from)
{
	merge_run(m,
		"INSERT INTO temp.m_lost SELECT w.station, w.day, w.low, w.high, "
		"w.unit, w.uid, w.changed_at, w.changed_by, coalesce(n.changed_at, "
		"d.at), coalesce(n.changed_by, d.by) FROM %s w LEFT JOIN main.weather "
		"n ON n.station = w.station AND n.day = w.day LEFT JOIN temp.m_clear d "
		"ON d.station = w.station AND d.day = w.day WHERE (w.low, w.high, "
		"w.unit) IS NOT (n.low, n.high, n.unit) AND coalesce(n.changed_at, "
		"d.at) IS NOT NULL",
		from);
}

#define WEATHER_ROW "station, day, changed_at, changed_by, low, high, unit"
#define OLD_WEATHER                                                                    \
	"station, day, json_extract(old, '$.changed_at'), json_extract(old, "          \
	"'$.changed_by'), json_extract(old, '$.low'), json_extract(old, '$.high'), "   \
	"json_extract(old, '$.unit')"

void merge_keep_weather(struct merge *m)
{
	if (merge_number(m, "SELECT EXISTS (SELECT 1 FROM temp.m_lost)") == 0)
		return;
	merge_run(m, "CREATE TEMP TABLE m_new_lost AS SELECT " WEATHER_ROW
		     " FROM temp.m_lost EXCEPT SELECT " OLD_WEATHER " FROM "
		     "main.history WHERE kind = 'weather' AND old IS NOT NULL");
	merge_write(m,
		"INSERT INTO main.history (kind, uid, op, old, station, day, undoes, "
		"at, by) SELECT DISTINCT 'weather', uid, 'update', "
		"json_object('station', station, 'day', day, 'low', low, 'high', high, 'unit', unit, 'uid', "
		"hex(uid), 'changed_at', changed_at, 'changed_by', changed_by), "
		"station, day, -1, at, by FROM temp.m_lost l WHERE EXISTS (SELECT "
		"l.station, l.day, l.changed_at, l.changed_by, l.low, l.high, l.unit "
		"INTERSECT SELECT * FROM temp.m_new_lost) ORDER BY station, day, "
		"changed_at, uid");
}

static void make_tables(struct merge *m)
{
	merge_run(m,
		"CREATE TEMP TABLE m_clear (station INTEGER, day TEXT, at TEXT, by "
		"TEXT, PRIMARY KEY (station, day)) WITHOUT ROWID;"
		"CREATE TEMP TABLE m_was AS SELECT * FROM main.weather WHERE 0;"
		"CREATE TEMP TABLE m_lost (station INTEGER, day TEXT, low REAL, high "
		"REAL, unit TEXT, uid BLOB, changed_at TEXT, changed_by TEXT, at TEXT, "
		"by TEXT)");
}

static int64_t take_out(struct merge *m)
{
	merge_run(m, "INSERT INTO temp.m_was SELECT * FROM main.weather w WHERE EXISTS "
		     "(SELECT 1 FROM temp.m_clear d WHERE d.station = w.station AND "
		     "d.day = w.day)");
	return merge_write(m,
		"DELETE FROM main.weather WHERE EXISTS (SELECT 1 FROM temp.m_clear d "
		"WHERE d.station = weather.station AND d.day = weather.day AND (d.at, "
		"d.by) >= (weather.changed_at, weather.changed_by))");
}

static int64_t put_in(struct merge *m)
{
	merge_run(m, "INSERT INTO temp.m_was SELECT w.* FROM temp.m_later l JOIN "
		     "main.weather w ON w.station = l.station AND w.day = l.day WHERE "
		     "l.had");
	return merge_write(m,
		"INSERT OR REPLACE INTO main.weather (station, day, low, high, unit, "
		"uid, changed_at, changed_by) SELECT station, day, low, high, unit, "
		"uid, changed_at, changed_by FROM temp.m_later ORDER BY changed_at, "
		"changed_by, unit, coalesce(low, -999), coalesce(high, -999), uid");
}

void merge_weather(struct merge *m)
{
	make_tables(m);
	find_cleared(m, "main");
	find_cleared(m, "other");
	int64_t gone = take_out(m);
	find_later(m);
	int64_t both = merge_number(m, "SELECT count(*) FROM temp.m_later WHERE had");
	int64_t came = put_in(m);
	find_lost(m, "temp.m_was");
	find_lost(m,
		"(SELECT s.ours AS station, o.day, o.low, o.high, o.unit, o.uid, "
		"o.changed_at, o.changed_by FROM other.weather o JOIN temp.m_map s ON "
		"s.kind = 'station' AND s.theirs = o.station)");
	merge_count_kind(m, "weather", came - both, both, gone);
}
