/* merge_fit.c - rows that do not go together though each was let into its book: the
 * later one holds, and the other waits in `aside` for a person. */
#include "merge_parts.h"

#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"

/* Of rows that have one key by now the latest one holds. */
static void keep_latest(struct merge *m, const char *kind, const char *key)
{
	merge_run(m,
		"UPDATE temp.m_win SET shown = 0 WHERE rep IN (SELECT rep FROM (SELECT "
		"rep, row_number() OVER (PARTITION BY %s ORDER BY at DESC, by DESC, "
		"body DESC, rep) AS place FROM temp.m_win WHERE kind = '%s' AND shown) "
		"WHERE place > 1)",
		key, kind);
}

void merge_fit_biofixes(struct merge *m)
{
	keep_latest(m, "biofix",
		"json_extract(body, '$.farm'), json_extract(body, '$.pest'), "
		"json_extract(body, '$.season')");
}

static int32_t setting(struct merge *m, const char *name, int32_t usual)
{
	char value[NOTE_BYTES] = "";
	int32_t n = usual;
	struct query q;

	if (!m->ok)
		return usual;
	query_start_once(&q, m->b,
		"SELECT json_extract(body, '$.value') FROM temp.m_win WHERE kind = "
		"'setting' AND shown AND json_extract(body, '$.name') = ?1");
	query_text(&q, name);
	if (query_row(&q))
		query_get_copy(&q, value, sizeof value);
	merge_end(m, &q);
	return text_int(value, 0, INT32_MAX, &n) ? n : usual;
}

static void hide_earlier(struct merge *m, const char *low, const char *high)
{
	merge_run(m,
		"UPDATE temp.m_win SET shown = 0 WHERE rep = (SELECT rep FROM "
		"temp.m_win WHERE kind = 'setting' AND shown AND json_extract(body, "
		"'$.name') IN (%Q, %Q) ORDER BY at, by, body LIMIT 1)",
		low, high);
}

/* What is usual may not go with the one that is left either. */
static void fit(struct merge *m, const char *low, int32_t usual_low, const char *high,
	int32_t usual_high)
{
	for (int i = 0; i < 2; i++)
		if (setting(m, low, usual_low) > setting(m, high, usual_high))
			hide_earlier(m, low, high);
}

/* One that was set aside may have been set anew since. */
void merge_fit_settings(struct merge *m)
{
	keep_latest(m, "setting", "json_extract(body, '$.name')");
	fit(m, "read_num", limits_usual.read_num, "read_den", limits_usual.read_den);
	fit(m, "join_nights", limits_usual.join_nights, "long_nights",
		limits_usual.long_nights);
}
