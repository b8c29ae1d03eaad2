/* The key lines of all pages, at every width. */
#include "base/words.h"
#include "screen/alerts_page.h"
#include "screen/book_page.h"
#include "screen/diary_page.h"
#include "screen/entry_page.h"
#include "screen/flight_page.h"
#include "screen/form_page.h"
#include "screen/frame.h"
#include "screen/hotspots_page.h"
#include "screen/picks_page.h"
#include "screen/prompt.h"
#include "screen/run_page.h"
#include "screen/samples.h"
#include "screen/service_page.h"
#include "screen/start_page.h"
#include "screen/text_page.h"
#include "screen/thresholds_page.h"
#include "screen/today_page.h"
#include "screen/weather_page.h"
#include "screen/week_page.h"
#include "screen/why_page.h"

static const struct {
	const char *page;
	struct key_rows (*keys)(void);
} tables[] = {
	{ "Alerts", alerts_page_keys },
	{ "Backups", backups_page_keys },
	{ "Book", book_page_keys },
	{ "Diary", diary_page_keys },
	{ "Flight", flight_page_keys },
	{ "Form", form_page_keys },
	{ "Hot spots", hotspots_page_keys },
	{ "List", entry_page_all_keys },
	{ "Keys", help_page_keys },
	{ "Picks", picks_page_keys },
	{ "Run", run_page_keys },
	{ "Service", service_page_keys },
	{ "Start", start_page_keys },
	{ "Text", text_page_keys },
	{ "Thresholds", thresholds_page_keys },
	{ "Today", today_page_keys },
	{ "Weather", weather_page_keys },
	{ "Week", week_page_keys },
	{ "Why", why_page_keys },
};
enum { TABLES = sizeof tables / sizeof *tables };

/* Takes the key, or the key and its word, off the front of a key line. */
static bool take_key(const struct key_row *k, const char **line)
{
	char both[64];
	size_t n = (size_t)snprintf(
		both, sizeof both, "%s %s", k->key, k->word ? words_in(k->word) : "");

	if (strncmp(*line, both, n) != 0)
		n = strlen(k->key);
	if (strncmp(*line, both, n) != 0 || !strchr(" \n", (*line)[n]))
		return false;
	*line += n;
	*line += strspn(*line, " ");
	return true;
}

/* Esc, where it has a word, and ? always stand there. */
static bool must_stand(const struct key_row *k)
{
	return k->word && (k->in.kind == INPUT_ESC ||
				  (k->in.kind == INPUT_CHAR && k->in.ch == '?'));
}

/* The pages, and behind them what the message line asks. */
static struct key_rows nth_keys(size_t i)
{
	return i < TABLES ? tables[i].keys()
			  : prompt_keys((enum prompt)((int)i - TABLES));
}

static void expect_key_line(size_t table, const char *line, int cols)
{
	const struct key_rows keys = nth_keys(table);
	const char *name = table < TABLES ? tables[table].page : "a prompt";

	line += strspn(line, " ");
	for (size_t i = 0; i < keys.n; i++) {
		const struct key_row *k = &keys.rows[i];

		if (k->word && !take_key(k, &line) && must_stand(k))
			fail_msg("%s at %d columns: no %s", name, cols, k->key);
	}
	if (*line != '\n')
		fail_msg("%s at %d columns: %s", name, cols, line);
}

static void key_lines_cut_no_word_and_keep_the_way_out(void **state)
{
	enum { ROWS = 6, COLS_LEAST = 20, COLS_MOST = 160 };
	struct canvas c = { 0 };
	struct buf text = { 0 };

	(void)state;
	for (size_t i = 0; i < TABLES + PROMPT_COUNT; i++)
		for (int cols = COLS_LEAST; cols <= COLS_MOST; cols++) {
			const char *line = NULL;
			struct frame f = { .title = "", .keys = nth_keys(i) };

			canvas_size(&c, ROWS, cols);
			frame_draw(&c, &f);
			buf_clear(&text);
			canvas_dump(&c, false, &text);
			line = text.text;
			for (int row = 0; row < ROWS - 1; row++)
				line = strchr(line, '\n') + 1;
			expect_key_line(i, line, cols);
		}
	buf_free(&text);
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(key_lines_cut_no_word_and_keep_the_way_out),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
