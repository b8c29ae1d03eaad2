/* merge_visits.c - the big table. Most visits are in one book alone or the same in
 * both, and are copied or passed over as they are. The others are looked at by trap and
 * day: all versions that nobody changed or removed on purpose since stay, the latest of
 * them in the diary, the rest as its rivals until a person settles it. */
#include "merge_parts.h"

/* What was seen and written, the same in every book: references have numbers of their
 * own in each. The second is what the history keeps. */
#define WORDS                                                                          \
	"json_object('o', v.outcome, 'r', v.reason, 'c', v.count, 'f', v.females, "    \
	"'t', v.others, 's', v.stirred, 'w', v.scout, 'n', v.note)"
#define OLD_WORDS                                                                      \
	"json_object('o', json_extract(h.old, '$.outcome'), "                          \
	"'r', json_extract(h.old, '$.reason'), 'c', json_extract(h.old, '$.count'), "  \
	"'f', json_extract(h.old, '$.females'), "                                      \
	"'t', json_extract(h.old, '$.others'), "                                       \
	"'s', json_extract(h.old, '$.stirred'), "                                      \
	"'w', json_extract(h.old, '$.scout'), 'n', json_extract(h.old, '$.note'))"
#define COLUMNS                                                                        \
	"outcome, reason, count, females, others, new_card, new_lure, stirred, "       \
	"scout, note, uid, changed_at, changed_by"
/* The id of a trap's visit of a day, without the trap. */
#define DAY_ID "CAST(julianday(day) - 2415020.5 AS INTEGER) * 1000000"

static void make_tables(struct merge *m)
{
	/* Looked up a million times: by row number alone. */
	merge_run(m,
		"CREATE TEMP TABLE m_trap (theirs INTEGER PRIMARY KEY, ours INTEGER);"
		"CREATE TEMP TABLE m_card (theirs INTEGER PRIMARY KEY, ours INTEGER);"
		"CREATE TEMP TABLE m_lure (theirs INTEGER PRIMARY KEY, ours INTEGER);"
		"INSERT INTO temp.m_trap SELECT theirs, ours FROM temp.m_map WHERE "
		"kind = 'trap';"
		"INSERT INTO temp.m_card SELECT theirs, ours FROM temp.m_map WHERE "
		"kind = 'card';"
		"INSERT INTO temp.m_lure SELECT theirs, ours FROM temp.m_map WHERE "
		"kind = 'lure';"
		"CREATE INDEX temp.m_trap_ours ON m_trap (ours)");
	merge_run(m,
		"CREATE TEMP TABLE m_key (id INTEGER PRIMARY KEY);"
		"CREATE TEMP TABLE m_past (id INTEGER, trap INTEGER, day TEXT, uid "
		"BLOB, at TEXT, by TEXT, words TEXT);"
		"CREATE TEMP TABLE m_gone (uid BLOB, at TEXT, by TEXT, words TEXT, "
		"PRIMARY KEY (uid, at, by, words)) WITHOUT ROWID;"
		"CREATE TEMP TABLE m_burnt (uid BLOB PRIMARY KEY, at TEXT, by TEXT) "
		"WITHOUT ROWID;"
		"CREATE TEMP TABLE m_leaf (id INTEGER, trap INTEGER, day TEXT, outcome "
		"TEXT, reason TEXT, count INTEGER, females INTEGER, others INTEGER, "
		"new_card INTEGER, new_lure INTEGER, stirred INTEGER, scout TEXT, "
		"note TEXT, uid BLOB, changed_at TEXT, changed_by TEXT, words TEXT, "
		"kinds TEXT, place INTEGER, same INTEGER);"
		"CREATE INDEX temp.m_leaf_id ON m_leaf (id)");
}

/* Versions that somebody changed or removed knowing them, by their uid alone: the trap
 * may be gone as well. What stands in a book now is not over by that book's own
 * history, even when two changes of one moment say so. */
static void find_gone(struct merge *m, const char *side)
{
	merge_run(m,
		"DELETE FROM temp.m_past; INSERT INTO temp.m_past SELECT " DAY_ID
		" + h.trap, h.trap, day, h.uid, json_extract(h.old, '$.changed_at'), "
		"json_extract(h.old, '$.changed_by'), " OLD_WORDS " FROM %s.history h "
		"WHERE h.kind = 'visit' AND h.old IS NOT NULL;"
		"DELETE FROM temp.m_past WHERE EXISTS (SELECT 1 FROM %s.visit v WHERE "
		"v.id = m_past.id AND v.uid = m_past.uid AND v.changed_at = m_past.at "
		"AND v.changed_by = m_past.by AND " WORDS " = m_past.words);"
		"DELETE FROM temp.m_past WHERE EXISTS (SELECT 1 FROM %s.rival v WHERE "
		"v.trap = m_past.trap AND v.day = m_past.day AND v.uid = m_past.uid "
		"AND v.changed_at = m_past.at AND v.changed_by = m_past.by AND " WORDS
		" = m_past.words);"
		"INSERT OR IGNORE INTO temp.m_gone SELECT uid, at, by, words FROM "
		"temp.m_past",
		side, side, side);
	merge_run(m,
		"INSERT INTO temp.m_burnt SELECT uid, changed_at, changed_by FROM "
		"%s.tombstone WHERE kind = 'visit' ON CONFLICT (uid) DO UPDATE SET at "
		"= excluded.at, by = excluded.by WHERE (excluded.at, excluded.by) > "
		"(at, by)",
		side);
}

/* The visits of which something is over or removed. */
static void find_touched(struct merge *m)
{
	merge_run(m, "CREATE TEMP TABLE m_touched (uid BLOB PRIMARY KEY) WITHOUT "
		     "ROWID; INSERT INTO temp.m_touched SELECT uid FROM temp.m_gone "
		     "UNION SELECT uid FROM temp.m_burnt");
	if (merge_number(m, "SELECT EXISTS (SELECT 1 FROM temp.m_touched)") == 0)
		return;
	merge_run(m,
		"INSERT OR IGNORE INTO temp.m_key SELECT id FROM main.visit WHERE uid "
		"IN (SELECT uid FROM temp.m_touched);"
		"INSERT OR IGNORE INTO temp.m_key SELECT o.id - o.trap + t.ours FROM "
		"other.visit o CROSS JOIN temp.m_trap t WHERE t.theirs = o.trap AND "
		"o.uid IN (SELECT uid FROM temp.m_touched)");
}

/* The visits of both, from the book that has fewer of them. */
static const char *from_smaller(struct merge *m)
{
	int64_t more = merge_number(m, "SELECT (SELECT count(*) FROM other.visit) - "
				       "(SELECT count(*) FROM main.visit)");

	return more > 0
		       ? "main.visit v CROSS JOIN temp.m_trap t CROSS JOIN other.visit "
			 "o WHERE t.ours = v.trap AND o.id = v.id - v.trap + t.theirs"
		       : "other.visit o CROSS JOIN temp.m_trap t CROSS JOIN main.visit "
			 "v WHERE t.theirs = o.trap AND v.id = o.id - o.trap + t.ours";
}

/* The trap and day of what cannot be decided by looking at one side. */
static void find_keys(struct merge *m)
{
	merge_run(m, "INSERT OR IGNORE INTO temp.m_key SELECT " DAY_ID " + trap FROM "
		     "main.rival;"
		     "INSERT OR IGNORE INTO temp.m_key SELECT " DAY_ID " + t.ours "
		     "FROM other.rival r JOIN temp.m_trap t ON t.theirs = r.trap");
	merge_run(m,
		"INSERT OR IGNORE INTO temp.m_key SELECT v.id FROM %s AND (v.uid <> "
		"o.uid OR v.changed_at <> o.changed_at OR v.changed_by <> o.changed_by "
		"OR v.outcome <> o.outcome OR v.count IS NOT o.count OR v.note <> o.note OR v.reason "
		"IS NOT o.reason OR v.females IS NOT o.females OR v.others IS NOT "
		"o.others OR v.stirred <> o.stirred OR v.scout <> o.scout)",
		from_smaller(m));
}

/* Visits that only the other book has. Where both have one it is the same, or is looked
 * at by its key. */
static int64_t copy_new(struct merge *m)
{
	bool keys = merge_number(m, "SELECT EXISTS (SELECT 1 FROM temp.m_key)") != 0;

	/* They were checked where they stand. */
	store_exec(m->b, "PRAGMA ignore_check_constraints = ON", "", NULL);
	int64_t n = merge_write(m,
		"INSERT INTO main.visit (id, trap, day, " COLUMNS ") SELECT o.id - "
		"o.trap + t.ours, t.ours, o.day, o.outcome, o.reason, o.count, "
		"o.females, o.others, CASE WHEN o.new_card IS NOT NULL THEN (SELECT "
		"c.ours FROM temp.m_card c WHERE c.theirs = o.new_card) END, CASE WHEN "
		"o.new_lure IS NOT NULL THEN (SELECT l.ours FROM temp.m_lure l WHERE "
		"l.theirs = o.new_lure) END, o.stirred, o.scout, o.note, o.uid, "
		"o.changed_at, o.changed_by FROM other.visit o CROSS JOIN temp.m_trap "
		"t WHERE t.theirs = o.trap%s ON CONFLICT (id) DO NOTHING",
		keys ? " AND NOT EXISTS (SELECT 1 FROM temp.m_key k WHERE k.id = o.id "
		       "- o.trap + t.ours)"
		     : "");
	store_exec(m->b, "PRAGMA ignore_check_constraints = OFF", "", NULL);
	return n;
}

/* Columns of m_leaf from a visit or rival `v`, its references as given. */
#define LEAF(trap, card, lure)                                                         \
	"k.id, " trap                                                                  \
	", v.day, v.outcome, v.reason, v.count, v.females, v.others, " card ", " lure  \
	", v.stirred, v.scout, v.note, v.uid, v.changed_at, "                          \
	"v.changed_by, " WORDS ", '', 0, 0 "

static void read_ours(struct merge *m, const char *table, const char *where)
{
	merge_run(m,
		"INSERT INTO temp.m_leaf SELECT " LEAF("v.trap", "v.new_card",
			"v.new_lure") "FROM temp.m_key k JOIN main.%s v ON %s",
		table, where);
}

static void read_theirs(struct merge *m, const char *table, const char *where)
{
	merge_run(m,
		"INSERT INTO temp.m_leaf SELECT " LEAF("t.ours", "c.ours",
			"l.ours") "FROM temp.m_key k JOIN temp.m_trap t ON t.ours = "
				  "k.id %% 1000000 JOIN other.%s v ON %s LEFT JOIN "
				  "temp.m_card c ON c.theirs = v.new_card LEFT JOIN "
				  "temp.m_lure l ON l.theirs = v.new_lure",
		table, where);
}

static void read_leaves(struct merge *m)
{
	read_ours(m, "visit", "v.id = k.id");
	read_ours(m, "rival",
		"v.trap = k.id % 1000000 AND v.day = date(k.id / 1000000 + 2415020.5)");
	read_theirs(m, "visit", "v.id = k.id - t.ours + t.theirs");
	read_theirs(m, "rival",
		"v.trap = t.theirs AND v.day = date(k.id / 1000000 + 2415020.5)");
}

/* place 1: it holds; 0: it was removed by somebody who did not know it. */
static void judge_leaves(struct merge *m)
{
	merge_run(m,
		"DELETE FROM temp.m_leaf WHERE (uid, changed_at, changed_by, words) "
		"IN (SELECT * FROM temp.m_gone);"
		"UPDATE temp.m_leaf SET kinds = coalesce((SELECT hex FROM temp.m_place "
		"WHERE kind = 'lure' AND id = new_lure), '') || ',' || coalesce(("
		"SELECT hex FROM temp.m_place WHERE kind = 'card' AND id = new_card), "
		"'');"
		"DELETE FROM temp.m_leaf WHERE rowid NOT IN (SELECT min(rowid) FROM "
		"temp.m_leaf GROUP BY id, uid, changed_at, changed_by, words, kinds);"
		"UPDATE temp.m_leaf SET place = p.place FROM (SELECT f.rowid AS at, "
		"row_number() OVER (PARTITION BY f.id ORDER BY changed_at DESC, "
		"changed_by DESC, words DESC, kinds DESC, f.uid) AS place FROM "
		"temp.m_leaf f LEFT JOIN temp.m_burnt d ON d.uid = f.uid WHERE d.uid "
		"IS NULL OR (f.changed_at, f.changed_by) > (d.at, d.by)) p WHERE p.at "
		"= m_leaf.rowid");
}

/* Those that a person has to settle are none of them. */
static int64_t count_changed(struct merge *m)
{
	return merge_number(m,
		"SELECT count(*) FROM temp.m_leaf f JOIN main.visit v ON v.id = f.id "
		"WHERE f.place = 1 AND " WORDS " <> f.words AND NOT EXISTS (SELECT 1 "
		"FROM temp.m_leaf r WHERE r.id = f.id AND r.place <> 1)");
}

/* What stands there already is left alone. */
static void write_leaves(struct merge *m, int64_t *came, int64_t *gone)
{
	*gone = merge_number(m,
		"SELECT count(*) FROM temp.m_key k JOIN main.visit v ON v.id = k.id "
		"WHERE NOT EXISTS (SELECT 1 FROM temp.m_leaf f WHERE f.id = k.id AND "
		"f.place = 1)");
	*came += merge_number(m,
		"SELECT count(*) FROM temp.m_leaf f WHERE f.place = 1 AND NOT EXISTS "
		"(SELECT 1 FROM main.visit v WHERE v.id = f.id)");
	merge_run(m,
		"UPDATE temp.m_leaf SET same = 1 WHERE place = 1 AND EXISTS (SELECT 1 "
		"FROM main.visit v WHERE v.id = m_leaf.id AND v.uid = m_leaf.uid AND "
		"v.changed_at = m_leaf.changed_at AND v.changed_by = m_leaf.changed_by "
		"AND " WORDS " = m_leaf.words AND v.new_card IS m_leaf.new_card "
		"AND v.new_lure IS m_leaf.new_lure)");
	merge_write(m, "DELETE FROM main.visit WHERE id IN (SELECT id FROM temp.m_key "
		       "EXCEPT SELECT id FROM temp.m_leaf WHERE same)");
	merge_write(m, "INSERT INTO main.visit (id, trap, day, " COLUMNS ") SELECT id, "
		       "trap, day, " COLUMNS " FROM temp.m_leaf WHERE place = 1 AND "
		       "NOT same");
}

static void write_rivals(struct merge *m)
{
	merge_run(m, "CREATE TEMP TABLE m_rival AS SELECT trap, day, " COLUMNS " FROM "
		     "temp.m_leaf WHERE place <> 1;"
		     "CREATE TEMP TABLE m_known AS SELECT trap, day, " COLUMNS " FROM "
		     "main.rival");
	merge_write(m, "DELETE FROM main.rival WHERE id IN (SELECT id FROM (SELECT id, "
		       "trap, day, " COLUMNS " FROM main.rival) r WHERE NOT EXISTS "
		       "(SELECT trap, day, " COLUMNS " INTERSECT SELECT * FROM "
		       "temp.m_rival))");
	merge_write(m, "INSERT INTO main.rival (trap, day, " COLUMNS ") SELECT * FROM "
		       "(SELECT * FROM temp.m_rival EXCEPT SELECT * FROM temp.m_known) "
		       "ORDER BY trap, day, uid");
}

static void bury(struct merge *m)
{
	merge_write(m,
		"INSERT INTO main.tombstone (uid, kind, changed_at, changed_by) SELECT "
		"uid, kind, changed_at, changed_by FROM other.tombstone WHERE kind IN "
		"('visit', 'weather') ON CONFLICT (uid) DO UPDATE SET changed_at = "
		"excluded.changed_at, changed_by = excluded.changed_by WHERE "
		"(excluded.changed_at, excluded.changed_by) > (changed_at, "
		"changed_by)");
}

void merge_visits(struct merge *m)
{
	int64_t came, theirs, gone = 0;

	make_tables(m);
	find_gone(m, "main");
	find_gone(m, "other");
	find_touched(m);
	find_keys(m);
	came = copy_new(m);
	read_leaves(m);
	judge_leaves(m);
	theirs = count_changed(m);
	write_leaves(m, &came, &gone);
	write_rivals(m);
	bury(m);
	merge_count_kind(m, "visit", came, theirs, gone);
}
