/* check.c - is the file sound, and does what it says hang together? */
#include "check.h"
#include "shape.h"

#include "base/buf.h"
#include "base/words.h"

#include <stdio.h>

void finder_say(struct finder *f, const char *text)
{
	(*f->found)++;
	f->tell(f->arg, text);
}

bool check_file(struct finder *f, const char *what, struct err *e)
{
	struct query q;
	char text[512];

	query_start(&q, f->book, "PRAGMA integrity_check");
	while (query_row(&q)) {
		char finding[256];
		query_get_copy(&q, finding, sizeof finding);
		if (sqlite3_stricmp(finding, "ok") == 0)
			continue;
		snprintf(text, sizeof text, _("the file is damaged: %s"), finding);
		finder_say(f, text);
	}
	return query_end(&q, what, e);
}

static bool check_shape(struct finder *f, struct err *e)
{
	char fault[256];

	if (!store_shape_fault(f->book, fault, sizeof fault, e))
		return false;
	if (*fault)
		finder_say(f, fault);
	return true;
}

static bool check_references(struct finder *f, const char *what, struct err *e)
{
	struct query q;
	char text[512];

	query_start(&q, f->book,
		"SELECT x.\"table\", x.parent, count(*) FROM sqlite_schema t JOIN "
		"pragma_foreign_key_check(t.name) x WHERE t.type = 'table' AND t.name "
		"<> ?1 GROUP BY 1, 2");
	query_text(&q, f->passed ? f->passed : "");
	while (query_row(&q)) {
		char table[NAME_BYTES], parent[NAME_BYTES];
		query_get_copy(&q, table, sizeof table);
		query_get_copy(&q, parent, sizeof parent);
		snprintf(text, sizeof text,
			_("%d rows of %s name a %s that is not in the book"),
			(int)query_get32(&q), table, parent);
		finder_say(f, text);
	}
	return query_end(&q, what, e);
}

bool check_sound(struct finder *f, const char *what, struct err *e)
{
	return check_file(f, what, e) && check_shape(f, e) &&
	       check_references(f, what, e) && check_readable(f, what, e) &&
	       check_texts(f, what, e);
}

enum finding { NOT_HUNG, OTHER_FARM, TO_COME, USUAL_LURE, LURE_GIVEN, FINDINGS };

/* Each gives trap, farm and a third text for the sentence; ?1 is today. */
static const char *const finding_sql[FINDINGS] = {
	[NOT_HUNG] = "SELECT t.label, f.name, v.day FROM "
		     "(SELECT min(id) AS id FROM visit GROUP BY trap) m "
		     "JOIN visit v ON v.id = m.id JOIN trap t ON t.id = v.trap "
		     "JOIN farm f ON f.id = t.farm "
		     "WHERE v.outcome <> 'hung' AND ?1 IS NOT NULL",
	[OTHER_FARM] = "SELECT t.label, f.name, b.name FROM trap t "
		       "JOIN farm f ON f.id = t.farm JOIN block b ON b.id = t.block "
		       "WHERE b.farm <> t.farm AND ?1 IS NOT NULL",
	[TO_COME] = "SELECT t.label, f.name, v.day FROM visit v "
		    "JOIN trap t ON t.id = v.trap JOIN farm f ON f.id = t.farm "
		    "WHERE v.day > ?1",
	[USUAL_LURE] = "SELECT t.label, f.name, l.name FROM trap t "
		       "JOIN farm f ON f.id = t.farm JOIN lure l ON l.id = t.lure "
		       "WHERE l.pest <> t.pest AND ?1 IS NOT NULL",
	[LURE_GIVEN] = "SELECT t.label, f.name, v.day FROM visit v "
		       "JOIN lure l ON l.id = v.new_lure JOIN trap t ON t.id = v.trap "
		       "JOIN farm f ON f.id = t.farm "
		       "WHERE l.pest <> t.pest AND ?1 IS NOT NULL",
};

static void write_finding(struct buf *out, enum finding finding, const char *const s[3])
{
	buf_clear(out);
	buf_addf(out, _("trap %s of %s"), s[0], s[1]);
	buf_add(out, " ");
	switch (finding) {
	case NOT_HUNG:
		buf_addf(out, _("has a visit on %s, before it was ever hung"), s[2]);
		break;
	case OTHER_FARM:
		buf_addf(out, _("is in %s, a block of another farm"), s[2]);
		break;
	case TO_COME:
		buf_addf(out, _("has a visit on %s, a day still to come"), s[2]);
		break;
	case USUAL_LURE:
		buf_addf(out, _("usually gets %s, a lure of another pest"), s[2]);
		break;
	default:
		buf_addf(out, _("got a lure of another pest on %s"), s[2]);
	}
}

static bool check_rows(struct finder *f, enum finding finding, int32_t today,
	const char *what, struct err *e)
{
	struct buf text = { 0 };
	struct query q;

	query_start(&q, f->book, finding_sql[finding]);
	query_day(&q, today);
	while (query_row(&q)) {
		char label[NAME_BYTES], farm[NAME_BYTES], third[NAME_BYTES];
		query_get_copy(&q, label, sizeof label);
		query_get_copy(&q, farm, sizeof farm);
		query_get_copy(&q, third, sizeof third);
		write_finding(&text, finding, (const char *[]){ label, farm, third });
		finder_say(f, text.text);
	}
	buf_free(&text);
	return query_end(&q, what, e);
}

static bool check_shelf(
	struct finder *f, int32_t today, const char *what, struct err *e)
{
	struct query q;
	char text[256];

	query_start(&q, f->book,
		"SELECT name, stock_day FROM lure WHERE stock_day > ?1 UNION ALL "
		"SELECT name, stock_day FROM card WHERE stock_day > ?1");
	query_day(&q, today);
	while (query_row(&q)) {
		char name[NAME_BYTES], day[NAME_BYTES];
		query_get_copy(&q, name, sizeof name);
		query_get_copy(&q, day, sizeof day);
		snprintf(text, sizeof text,
			_("the stock of %s was counted on %s, a day still to come"),
			name, day);
		finder_say(f, text);
	}
	return query_end(&q, what, e);
}

bool book_check(struct book *b, int32_t today,
	void (*tell)(void *arg, const char *text), void *arg, int *found, struct err *e)
{
	struct finder f = { b, tell, arg, found, NULL };
	const char *what = N_("the book cannot be checked");

	*found = 0;
	bool ok = check_sound(&f, what, e);
	for (int i = 0; ok && i < FINDINGS; i++)
		ok = check_rows(&f, (enum finding)i, today, what, e);
	return ok && check_shelf(&f, today, what, e);
}
