/* Every column of every kind of file stands in the manual; run from the top folder. */
#include "desk.h"

#include <ctype.h>

static char *manual(void)
{
	struct buf all = { 0 };
	char piece[4096];
	size_t n;
	FILE *f = fopen("man/mothtally.5", "r");

	if (!f)
		fail_msg("man/mothtally.5 cannot be read from here");
	while ((n = fread(piece, 1, sizeof piece, f)) > 0)
		buf_add_n(&all, piece, n);
	fclose(f);
	return all.text;
}

static bool part_of_word(char ch)
{
	return isalnum((unsigned char)ch) || ch == '_' || ch == '-';
}

/* The word alone within the first n bytes of the text. */
static bool holds_word(const char *text, size_t n, const char *word)
{
	size_t size = strlen(word);

	for (const char *at = text; (at = strstr(at, word)) && at < text + n; at++)
		if ((at == text || !part_of_word(at[-1])) && !part_of_word(at[size]))
			return true;
	return false;
}

/* From the kind's heading ".Ss traps" or ".Ss pests, lures, cards" to the next one. */
static const char *section(const char *all, const char *kind, size_t *n)
{
	for (const char *at = all; (at = strstr(at, "\n.Ss ")); at++) {
		const char *line = at + 5, *end = strchr(line, '\n');
		if (!holds_word(line, (size_t)(end - line), kind))
			continue;
		const char *next = strstr(end, "\n.Ss "), *part = strstr(end, "\n.Sh ");
		if (!next || (part && part < next))
			next = part;
		*n = next ? (size_t)(next - line) : strlen(line);
		return line;
	}
	return NULL;
}

static void every_column_is_in_the_manual(void **state)
{
	char *all = manual();

	(void)state;
	for (size_t k = 0; kinds[k]; k++) {
		size_t n = 0;
		const char *text = section(all, kinds[k]->name, &n);
		if (!text)
			fail_msg("%s has no section", kinds[k]->name);
		for (size_t i = 0; i < kinds[k]->n_columns; i++)
			if (!holds_word(text, n, kinds[k]->columns[i].name))
				fail_msg("%s: no word of %s", kinds[k]->name,
					kinds[k]->columns[i].name);
	}
	free(all);
}

static void every_word_of_a_column_is_in_the_manual(void **state)
{
	char *all = manual();

	(void)state;
	for (size_t k = 0; kinds[k]; k++)
		for (size_t i = 0; i < kinds[k]->n_columns; i++) {
			const struct column *c = &kinds[k]->columns[i];
			for (int w = c->lo; c->word && w <= c->hi; w++)
				if (!strstr(all, c->word(w)))
					fail_msg("%s, %s: no word of %s",
						kinds[k]->name, c->name, c->word(w));
		}
	free(all);
}

static void every_column_has_its_sentence(void **state)
{
	(void)state;
	for (size_t k = 0; kinds[k]; k++)
		for (size_t i = 0; i < kinds[k]->n_columns; i++) {
			const struct column *c = &kinds[k]->columns[i];
			if (!c->help || c->help[strlen(c->help) - 1] != '.')
				fail_msg("%s, %s", kinds[k]->name, c->name);
		}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_column_is_in_the_manual),
		cmocka_unit_test(every_word_of_a_column_is_in_the_manual),
		cmocka_unit_test(every_column_has_its_sentence),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
