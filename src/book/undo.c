/* undo.c - the history of a visit: reading it, and going back in it. */
#include "book/diary.h"

#include "change.h"
#include "visit.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <string.h>

/* VISIT_COLUMNS out of the row that the history keeps. */
#define OLD_COLUMNS                                                                    \
	"json_extract(old, '$.id'), json_extract(old, '$.trap') AS trap, "             \
	"json_extract(old, '$.day') AS day, "                                          \
	"json_extract(old, '$.outcome') AS outcome, "                                  \
	"json_extract(old, '$.reason') AS reason, "                                    \
	"json_extract(old, '$.count') AS count, "                                      \
	"json_extract(old, '$.females') AS females, "                                  \
	"json_extract(old, '$.others') AS others, "                                    \
	"json_extract(old, '$.new_card'), json_extract(old, '$.new_lure'), "           \
	"json_extract(old, '$.stirred') AS stirred, "                                  \
	"json_extract(old, '$.scout'), json_extract(old, '$.note')"

bool book_old_visits_of(struct book *b, int64_t trap, int32_t first, int32_t last,
	struct old_visits *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT " OLD_COLUMNS ", at, by, op = 'delete' FROM history "
		"WHERE history.trap = ?1 AND history.day BETWEEN ?2 AND ?3 "
		"AND old IS NOT NULL "
		"ORDER BY at DESC, history.id DESC");
	q.table = "history";
	query_int(&q, trap);
	query_limit(&q, first);
	query_limit(&q, last);
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		struct old_visit *old = &out->items[out->n++];
		visit_read(&q, &old->visit, &old->words);
		query_get_copy(&q, old->changed_at, sizeof old->changed_at);
		query_get_copy(&q, old->changed_by, sizeof old->changed_by);
		old->removed = query_get(&q) != 0;
	}
	return query_end(&q, N_("the history cannot be read"), e);
}

bool book_old_visits(struct book *b, int64_t trap, int32_t day, struct old_visits *out,
	struct err *e)
{
	return book_old_visits_of(b, trap, day, day, out, e);
}

struct step {
	int64_t id; /* 0: none */
	int64_t trap;
	int32_t day;
	bool inserted; /* nothing stood there before it */
	unsigned char uid[STORE_UID_BYTES];
	struct visit old; /* unless inserted */
	struct visit_words old_words;
};

/* The step fails the query when it is not of the trap and day it is filed under. */
static void read_step(struct query *q, struct step *s)
{
	s->id = query_get(q);
	s->trap = query_get_within(q, 1, VISIT_TRAP_MAX);
	s->day = query_get_day(q);
	query_require(q, s->day != DAY_NONE);
	s->inserted = query_get(q) != 0;
	query_get_uid(q, s->uid);
	if (s->inserted)
		return;
	visit_read(q, &s->old, &s->old_words);
	query_require(q, s->old.trap == s->trap && s->old.day == s->day);
}

/* The latest step not taken back. An undo is no step: it stands where the step it
 * took back stood. A step under one of somebody else's stays as well: to take it back
 * would lose what they entered. */
static bool find_step(struct book *b, const struct undo_reach *reach, struct step *s,
	const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT h.id, h.trap, h.day, h.op = 'insert', h.uid, " OLD_COLUMNS
		" FROM trap t CROSS JOIN history h ON h.trap = t.id "
		"WHERE (?1 IS NULL OR t.farm = ?1) "
		"AND (?5 IS NULL OR t.id = ?5) AND h.day BETWEEN ?2 AND ?3 "
		"AND h.undoes IS NULL "
		"AND NOT EXISTS (SELECT 1 FROM history u WHERE u.undoes = h.id) "
		"AND (?4 IS NULL OR h.by = ?4 AND NOT EXISTS "
		"(SELECT 1 FROM history x WHERE x.trap = h.trap AND x.day = h.day "
		"AND x.id > h.id AND (x.undoes IS NULL AND x.by <> ?4 OR x.undoes <= 0 "
		"AND x.at > h.at AND coalesce(x.step = h.step, 0) = 0) "
		"AND NOT EXISTS (SELECT 1 FROM history u WHERE u.undoes = x.id))) "
		"ORDER BY h.id DESC LIMIT 1");
	q.table = "history";
	query_id(&q, reach->farm);
	query_limit(&q, reach->first);
	query_limit(&q, reach->last);
	if (reach->by)
		query_text(&q, reach->by);
	else
		query_id(&q, 0);
	query_id(&q, reach->trap);
	if (query_row(&q))
		read_step(&q, s);
	if (!query_end(&q, what, e))
		return false;
	return s->id ||
	       err_set(e, ERR_NOT_FOUND, _("there is nothing left to take back"));
}

static bool bring_back(
	struct book *b, const struct step *s, const char *what, struct err *e)
{
	struct query q;

	if (!change_pest_stays(b, s->id, what, e))
		return false;
	query_start(&q, b, "DELETE FROM tombstone WHERE uid = ?1");
	query_blob(&q, s->uid);
	if (!query_end(&q, what, e))
		return false;
	visit_insert(&q, b, &s->old, &s->old_words, s->uid);
	return query_end(&q, what, e) && visit_log_insert(b, s->trap, s->day, what, e);
}

/* From what stands there now to what stood there before the step. */
static bool take_back(struct book *b, const struct step *s, struct undone *out,
	const char *what, struct err *e)
{
	unsigned char uid[STORE_UID_BYTES];
	struct visit_words words;
	struct query q;
	bool found;

	*out = (struct undone){
		.trap = s->trap, .day = s->day, .removed = s->inserted
	};
	out->was.trap = s->trap;
	out->was.day = s->day;
	if (!visit_find(b, &out->was, &words, uid, &found, e))
		return false;
	if (!found)
		out->was.trap = 0;
	if (found && !s->inserted && memcmp(uid, s->uid, sizeof uid) == 0) {
		visit_update(&q, b, &s->old, &s->old_words);
		return query_end(&q, what, e);
	}
	if (found && !visit_bury(b, s->trap, s->day, &found, what, e))
		return false;
	return s->inserted || bring_back(b, s, what, e);
}

static bool undo(struct book *b, const struct undo_reach *reach, struct undone *out,
	const char *what, struct err *e)
{
	struct step s = { 0 };
	int64_t after = 0;

	return change_last(b, &after, what, e) && find_step(b, reach, &s, what, e) &&
	       take_back(b, &s, out, what, e) && change_unsettle(b, s.id, what, e) &&
	       change_mark(b, s.id, after, what, e);
}

bool book_undo_visit(struct book *b, const struct undo_reach *reach, struct undone *out,
	struct err *e)
{
	const char *what = N_("nothing is taken back");
	char name[SCOUT_BYTES]; /* cut as book_set_who cuts it */
	struct undo_reach within = *reach;

	text_copy(name, sizeof name, reach->by ? reach->by : "");
	if (reach->by)
		within.by = name;
	return store_begin(b, what, e) &&
	       store_end(b, undo(b, &within, out, what, e), what, e);
}
