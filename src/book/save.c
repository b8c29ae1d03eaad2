/* save.c - visits saved, added from files and removed. */
#include "book/diary.h"

#include "visit.h"

#include "base/words.h"

#include <stdio.h>
#include <string.h>

static const struct visit_words no_words;

void visit_name_trap(struct book *b, int64_t trap, char *out, size_t size)
{
	struct query q;

	snprintf(out, size, _("trap number %lld"), (long long)trap);
	query_start(&q, b,
		"SELECT t.label, f.name FROM trap t JOIN farm f ON f.id = t.farm "
		"WHERE t.id = ?1");
	query_int(&q, trap);
	if (query_row(&q)) {
		char label[NAME_BYTES], farm[NAME_BYTES];
		query_get_copy(&q, label, sizeof label);
		query_get_copy(&q, farm, sizeof farm);
		snprintf(out, size, _("trap %s of %s"), label, farm);
	}
	query_end(&q, "", NULL);
}

static void bind_visit(
	struct query *q, const struct visit *v, const struct visit_words *w)
{
	query_int(q, visit_id(v->trap, v->day));
	query_text(q, outcome_word(v->outcome));
	query_word(q, reason_word(v->reason));
	query_count(q, v->count);
	query_count(q, v->females);
	query_count(q, v->others);
	query_id(q, v->new_card);
	query_id(q, v->new_lure);
	query_int(q, v->stirred);
	query_text(q, w->scout);
	query_text(q, w->note);
	query_stamp(q);
}

void visit_insert(struct query *q, struct book *b, const struct visit *v,
	const struct visit_words *w, const unsigned char *uid)
{
	query_start(q, b,
		"INSERT INTO visit (id, outcome, reason, count, females, others, "
		"new_card, new_lure, stirred, scout, note, changed_at, changed_by, "
		"trap, day, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, "
		"?12, ?13, ?14, ?15, ?16)");
	bind_visit(q, v, w);
	query_int(q, v->trap);
	query_day(q, v->day);
	if (uid)
		query_blob(q, uid);
	else
		query_uid(q);
}

void visit_update(struct query *q, struct book *b, const struct visit *v,
	const struct visit_words *w)
{
	query_start(q, b,
		"UPDATE visit SET outcome = ?2, reason = ?3, count = ?4, females = ?5, "
		"others = ?6, new_card = ?7, new_lure = ?8, stirred = ?9, scout = ?10, "
		"note = ?11, changed_at = ?12, changed_by = ?13 WHERE id = ?1");
	bind_visit(q, v, w);
}

bool visit_log_insert(
	struct book *b, int64_t trap, int32_t day, const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"INSERT INTO history (kind, uid, op, trap, day, at, by) "
		"SELECT 'visit', uid, 'insert', trap, day, changed_at, changed_by "
		"FROM visit WHERE id = ?1");
	query_int(&q, visit_id(trap, day));
	return query_end(&q, what, e);
}

bool visit_bury(struct book *b, int64_t trap, int32_t day, bool *found,
	const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"INSERT OR REPLACE INTO tombstone (changed_at, changed_by, kind, uid) "
		"SELECT ?1, ?2, 'visit', uid FROM visit WHERE id = ?3");
	query_stamp(&q);
	query_int(&q, visit_id(trap, day));
	if (!query_end(&q, what, e))
		return false;
	*found = sqlite3_changes(b->db) > 0;
	query_start(&q, b, "DELETE FROM visit WHERE id = ?1");
	query_int(&q, visit_id(trap, day));
	return query_end(&q, what, e);
}

static bool number_good(int32_t n, const char *what, struct err *e)
{
	return n == COUNT_NONE || store_range_good(n, 0, COUNT_MAX, what, e);
}

static bool counts_good(const struct visit *v, struct err *e)
{
	const struct outcome_facts *facts = &outcome_facts[v->outcome];

	if (!number_good(v->count, N_("the count"), e) ||
		!number_good(v->females, N_("the number of females"), e) ||
		!number_good(v->others, N_("the number of other moths"), e))
		return false;
	if (facts->count == COUNT_MUST && v->count == COUNT_NONE)
		return err_set(e, ERR_INPUT,
			_("a visit \"%s\" needs a count; a blank is not zero"),
			facts->word);
	if (facts->count == COUNT_NEVER &&
		(v->count != COUNT_NONE || v->females != COUNT_NONE ||
			v->others != COUNT_NONE))
		return err_set(e, ERR_INPUT,
			_("a visit \"%s\" has no count; leave it blank"), facts->word);
	return true;
}

static bool visit_good(
	const struct visit *v, const struct visit_words *w, struct err *e)
{
	if (v->day < VISIT_DAY_FIRST || v->day > VISIT_DAY_LAST)
		return err_set(e, ERR_INPUT,
			_("the visit has no date from 1900-01-01 to 2199-12-31"));
	if (!store_range_good(v->outcome, 0, OUTCOME_COUNT - 1, N_("the outcome"), e) ||
		!store_range_good(
			v->reason, 0, REASON_COUNT - 1, N_("the reason"), e) ||
		!counts_good(v, e))
		return false;
	if (!reason_fits(v->reason, v->outcome))
		return err_set(e, ERR_INPUT,
			_("the reason \"%s\" does not fit a visit \"%s\""),
			reason_word(v->reason), outcome_word(v->outcome));
	return store_text_good(w->scout, N_("the scout's name"), e) &&
	       store_text_good(w->note, N_("the note"), e);
}

/* True when a new lure is one of the trap's pest, or of no single pest. */
static bool lure_good(
	struct book *b, const struct visit *v, const char *what, struct err *e)
{
	char lure[NAME_BYTES], lure_pest[CODE_BYTES], pest[CODE_BYTES], name[128];
	size_t at = (size_t)(v->trap * 31 + v->new_lure) % STORE_FITS;
	struct query q;
	bool other = false;

	if (v->new_lure == 0 || (b->grouped && b->fits[at].trap == v->trap &&
					b->fits[at].lure == v->new_lure))
		return true;
	query_start(&q, b,
		"SELECT l.name, lp.code, tp.code FROM trap t JOIN lure l ON l.id = ?2 "
		"JOIN pest lp ON lp.id = l.pest JOIN pest tp ON tp.id = t.pest "
		"WHERE t.id = ?1 AND l.pest <> t.pest");
	query_int(&q, v->trap);
	query_int(&q, v->new_lure);
	if (query_row(&q)) {
		other = true;
		query_get_copy(&q, lure, sizeof lure);
		query_get_copy(&q, lure_pest, sizeof lure_pest);
		query_get_copy(&q, pest, sizeof pest);
	}
	if (!query_end(&q, what, e))
		return false;
	if (!other) {
		b->fits[at].trap = v->trap;
		b->fits[at].lure = v->new_lure;
		return true;
	}
	visit_name_trap(b, v->trap, name, sizeof name);
	return err_set(e, ERR_INPUT,
		_("%s: the lure %s is for %s, but %s is for %s, and the plastic keeps "
		  "the scent; use a %s lure"),
		_(what), lure, lure_pest, name, pest, pest);
}

/* A row refers to something that the book does not hold. */
static bool fail_unknown(
	struct book *b, const struct visit *v, const char *what, struct err *e)
{
	const char *missing = _("the lure");
	struct query q;

	query_start(&q, b,
		"SELECT EXISTS (SELECT 1 FROM trap WHERE id = ?1), "
		"?2 IS NULL OR EXISTS (SELECT 1 FROM card WHERE id = ?2)");
	query_int(&q, v->trap);
	query_id(&q, v->new_card);
	if (query_row(&q)) {
		bool trap = query_get(&q) != 0, card = query_get(&q) != 0;
		missing = !trap ? _("the trap") : !card ? _("the card") : missing;
	}
	query_end(&q, what, NULL);
	return err_set(
		e, ERR_NOT_FOUND, _("%s: %s is not in the book"), _(what), missing);
}

static bool end_write(
	struct query *q, const struct visit *v, const char *what, struct err *e)
{
	query_row(q);
	bool unknown = q->code == SQLITE_CONSTRAINT_FOREIGNKEY;
	bool ok = query_end(q, what, e);

	return ok || (unknown && fail_unknown(q->book, v, what, e));
}

static bool same_words(const struct visit_words *a, const struct visit_words *b)
{
	return strcmp(a->scout, b->scout) == 0 && strcmp(a->note, b->note) == 0;
}

/* Who counts anew has settled which count holds; another note settles only what says
 * the same as the visit said. */
static bool settle_rivals(struct book *b, const struct visit *v,
	const struct visit *old, const char *what, struct err *e)
{
	bool same = v->outcome == old->outcome && v->count == old->count;

	return visit_settle_rivals(b, v->trap, v->day, same ? old : NULL, what, e);
}

static bool save(struct book *b, const struct visit *v, const struct visit_words *w,
	const char *what, struct err *e)
{
	unsigned char uid[STORE_UID_BYTES];
	struct visit_words old_words = { 0 };
	struct visit old = *v;
	struct query q;
	bool found;

	if (!lure_good(b, v, what, e) ||
		!visit_find(b, &old, &old_words, uid, &found, e))
		return false;
	if (!w)
		w = &old_words;
	if (found && visit_same(v, &old) && same_words(w, &old_words))
		return true;
	if (found)
		visit_update(&q, b, v, w);
	else
		visit_insert(&q, b, v, w, NULL);
	return end_write(&q, v, what, e) &&
	       (found ? settle_rivals(b, v, &old, what, e)
		      : visit_log_insert(b, v->trap, v->day, what, e));
}

bool book_save_visit(struct book *b, const struct visit *v, const struct visit_words *w,
	struct err *e)
{
	const char *what = N_("this count is not saved");

	if (!visit_good(v, w ? w : &no_words, e) || !store_begin(b, what, e))
		return false;
	return store_end(b, save(b, v, w, what, e), what, e);
}

/* "counted 12" or "skipped (weather)" */
static void describe(const struct visit *v, char *out, size_t size)
{
	const char *word = outcome_word(v->outcome);

	if (v->count != COUNT_NONE)
		snprintf(out, size, "%s %d", word, (int)v->count);
	else if (v->reason != REASON_NONE)
		snprintf(out, size, "%s (%s)", word, reason_word(v->reason));
	else
		snprintf(out, size, "%s", word);
}

static bool compare(struct book *b, const struct visit *v, const struct visit_words *w,
	bool *same, struct err *e)
{
	char name[128], iso[DAY_ISO_SIZE], ours[48], theirs[48];
	unsigned char uid[STORE_UID_BYTES];
	struct visit_words old_words = { 0 };
	struct visit old = *v;
	bool found;

	if (!visit_find(b, &old, &old_words, uid, &found, e))
		return false;
	*same = visit_same(v, &old) && same_words(w, &old_words);
	if (*same)
		return true;
	visit_name_trap(b, v->trap, name, sizeof name);
	day_iso(v->day, iso);
	describe(&old, ours, sizeof ours);
	describe(v, theirs, sizeof theirs);
	if (strcmp(ours, theirs) == 0)
		return err_set(e, ERR_INPUT,
			_("%s has a visit on %s already (%s), with other details"),
			name, iso, ours);
	return err_set(e, ERR_INPUT,
		_("%s has a visit on %s already: \"%s\", not \"%s\""), name, iso, ours,
		theirs);
}

bool book_add_visit(struct book *b, const struct visit *v, const struct visit_words *w,
	bool *same, struct err *e)
{
	const char *what = N_("the visit is not added");
	struct query q;

	*same = false;
	if (!w)
		w = &no_words;
	if (!visit_good(v, w, e) || !store_group_alive(b, what, e) ||
		!lure_good(b, v, what, e))
		return false;
	visit_insert(&q, b, v, w, NULL);
	query_row(&q);
	if (!query_taken(&q))
		return end_write(&q, v, what, e);
	query_end(&q, what, NULL);
	return compare(b, v, w, same, e);
}

bool book_remove_visit(struct book *b, int64_t trap, int32_t day, struct err *e)
{
	const char *what = N_("the visit is not removed");
	char iso[DAY_ISO_SIZE], name[128];
	bool found = false;

	if (!store_begin(b, what, e))
		return false;
	bool ok = visit_bury(b, trap, day, &found, what, e) &&
		  (!found || visit_settle_rivals(b, trap, day, NULL, what, e));
	if (ok && !found) {
		day_iso(day, iso);
		visit_name_trap(b, trap, name, sizeof name);
		ok = err_set(e, ERR_NOT_FOUND, _("%s has no visit on %s"), name, iso);
	}
	return store_end(b, ok, what, e);
}
