/* samples.h - what the tests of all pages share. Names and numbers in the samples are
 * invented. */
#ifndef TESTS_SCREEN_SAMPLES_H
#define TESTS_SCREEN_SAMPLES_H

#include "base/mem.h"
#include "base/text.h"
#include "screen/page.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { SAMPLE_FARM = 5 };

/* Tue 21 July 2026 */
static inline int32_t sample_day(void)
{
	return day_from_ymd(2026, 7, 21);
}

#define SET(field, text) text_copy((field), sizeof(field), (text))

/* Names and texts as long as they get, one of them of double-width characters. */
static inline void sample_long(char *out, size_t size, int i)
{
	for (size_t n = 0; n + 4 < size; n += 3)
		memcpy(out + n, i % 2 ? "\u6843" : "Wwe", 4);
}

/* The canvas as text against tests/screen/golden/NAME.txt; UPDATE_GOLDEN=1 in the
 * environment writes the file instead. */
static inline void expect_golden(const char *name, const struct canvas *c, bool inks)
{
	char path[128];
	struct buf got = { 0 };
	char want[32768] = "";
	FILE *f = NULL;

	snprintf(path, sizeof path, "tests/screen/golden/%s.txt", name);
	canvas_dump(c, inks, &got);
	f = fopen(path, getenv("UPDATE_GOLDEN") ? "w" : "r");
	if (!f)
		fail_msg("%s does not open", path);
	if (getenv("UPDATE_GOLDEN"))
		fputs(got.text, f);
	else
		want[fread(want, 1, sizeof want - 1, f)] = '\0';
	fclose(f);
	if (!getenv("UPDATE_GOLDEN") && strcmp(got.text, want) != 0)
		fail_msg("%s: got\n%s", path, got.text);
	buf_free(&got);
}

static inline void expect_shows(
	const char *why, const struct canvas *c, const char *text)
{
	struct buf got = { 0 };

	canvas_dump(c, false, &got);
	if (!strstr(got.text, text))
		fail_msg("%s: no \"%s\" in\n%s", why, text, got.text);
	buf_free(&got);
}

static inline void expect_hides(
	const char *why, const struct canvas *c, const char *text)
{
	struct buf got = { 0 };

	canvas_dump(c, false, &got);
	if (strstr(got.text, text))
		fail_msg("%s: \"%s\" in\n%s", why, text, got.text);
	buf_free(&got);
}

/* Keys as text: a character is itself; \n Enter, \x1b Esc, \b Backspace, ^ up,
 * ~ down. */
static inline struct input sample_key(char ch)
{
	switch (ch) {
	case '\n':
		return (struct input){ INPUT_ENTER, 0 };
	case '\x1b':
		return (struct input){ INPUT_ESC, 0 };
	case '\b':
		return (struct input){ INPUT_BACKSPACE, 0 };
	case '^':
		return (struct input){ INPUT_UP, 0 };
	case '~':
		return (struct input){ INPUT_DOWN, 0 };
	default:
		return (struct input){ INPUT_CHAR, (uint32_t)(unsigned char)ch };
	}
}

/* Every key has its name and its sentence, and none stands for two things. */
static inline void expect_keys(struct key_rows keys)
{
	for (size_t i = 0; i < keys.n; i++) {
		const struct key_row *k = &keys.rows[i];
		size_t found = 0;

		assert_non_null(k->key);
		assert_non_null(k->help);
		assert_true(k->key[0] && k->help[0] && k->action > 0);
		assert_int_equal(keys_find(keys, k->in.kind == INPUT_CHAR && !k->in.ch
							 ? sample_key('7')
							 : k->in),
			k->action);
		if (k->alias.kind != INPUT_NONE)
			assert_int_equal(keys_find(keys, k->alias), k->action);
		for (size_t j = 0; j < keys.n; j++)
			found += strcmp(keys.rows[j].key, k->key) == 0;
		if (found != 1)
			fail_msg("%s stands there %zu times", k->key, found);
	}
}

#endif
