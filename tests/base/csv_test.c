#include "csv_transcribe.h"

/* The examples of RFC 4180, section 2, number by number. */
static void csv_reads_the_examples_of_rfc_4180(void **state)
{
	static const struct reading row[] = {
		{ "1", BYTES("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
			"1[aaa|bbb|ccc]2[zzz|yyy|xxx]" },
		{ "2", BYTES("aaa,bbb,ccc\r\nzzz,yyy,xxx"),
			"1[aaa|bbb|ccc]2[zzz|yyy|xxx]" },
		{ "3", BYTES("field_name,field_name,field_name\r\naaa,bbb,ccc\r\n"),
			"1[field_name|field_name|field_name]2[aaa|bbb|ccc]" },
		{ "4", BYTES("aaa,bbb,ccc"), "1[aaa|bbb|ccc]" },
		{ "5", BYTES("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
			"1[aaa|bbb|ccc]2[zzz|yyy|xxx]" },
		{ "6", BYTES("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
			"1[aaa|b\r\nbb|ccc]3[zzz|yyy|xxx]" },
		{ "7", BYTES("\"aaa\",\"b\"\"bb\",\"ccc\""), "1[aaa|b\"bb|ccc]" },
	};

	(void)state;
	check_readings(row, sizeof row / sizeof *row);
}

static void csv_reads_what_spreadsheets_write(void **state)
{
	static const struct reading row[] = {
		{ "nothing", BYTES(""), "" },
		{ "only a byte order mark", BYTES("\xEF\xBB\xBF"), "" },
		{ "a byte order mark",
			BYTES("\xEF\xBB\xBF"
			      "a,b\n"),
			"1[a|b]" },
		{ "one before a quote", BYTES("\xEF\xBB\xBF\"a\",b\n"), "1[a|b]" },
		{ "one later on is refused",
			BYTES("a\n\xEF\xBB\xBF"
			      "b\n"),
			"1[a]t.csv, line 2, column 1: \"?b\" holds the character "
			"U+FEFF, which cannot be seen; take it out" },
		{ "line feeds", BYTES("a,b\nc,d\n"), "1[a|b]2[c|d]" },
		{ "empty lines are skipped", BYTES("\n\r\na\n\n\r\nb\n\n"),
			"3[a]6[b]" },
		{ "a line of blanks is a row", BYTES(" \n"), "1[ ]" },
		{ "empty fields", BYTES(",\n,,a\na,\n"), "1[|]2[||a]3[a|]" },
		{ "an empty field in quotes is a row", BYTES("\"\"\n"), "1[]" },
		{ "empty quotes", BYTES("\"\",\"\"\n"), "1[|]" },
		{ "a comma in quotes", BYTES("\"a,b\",c\n"), "1[a,b|c]" },
		{ "only quotes", BYTES("\"\"\"\",\"\"\"\"\"\"\n"), "1[\"|\"\"]" },
		{ "line breaks in quotes", BYTES("\"a\nb\n\nc\",d\ne\n"),
			"1[a\nb\n\nc|d]5[e]" },
		{ "blanks and tabs belong to the text", BYTES(" a ,\tb\n"),
			"1[ a |\tb]" },
		{ "all lengths of characters",
			BYTES("\xC3\xA9,\xE2\x96\x88,\xF0\x9F\x8D\x8E\n"),
			"1[\xC3\xA9|\xE2\x96\x88|\xF0\x9F\x8D\x8E]" },
		{ "a guarded formula", BYTES("'=1+1,'@a,'+a,'-a\n"),
			"1['=1+1|'@a|'+a|'-a]" },
		{ "a guarded formula in quotes", BYTES("\"'=a,b\"\n"), "1['=a,b]" },
		{ "an own apostrophe stays", BYTES("'a,',''\n"), "1['a|'|'']" },
		{ "one of two goes before a sign", BYTES("''=a\n"), "1[''=a]" },
		{ "an unguarded formula is text", BYTES("=1+1,-5\n"), "1[=1+1|-5]" },
	};

	(void)state;
	check_readings(row, sizeof row / sizeof *row);
}

static void csv_names_place_and_cure_of_what_is_bad(void **state)
{
	static const struct reading row[] = {
		{ "a NUL byte", BYTES("a,b\n1,x\0y\n"),
			"1[a|b]t.csv, line 2, column 2: a NUL byte stands after \"x\"; "
			"a CSV "
			"file holds text only" },
		{ "a NUL byte at once", BYTES("\0\n"),
			"t.csv, line 1, column 1: a NUL byte stands after \"\"; a CSV "
			"file holds "
			"text only" },
		{ "Latin-1", BYTES("a\nGr\xFCn,b\n"),
			"1[a]t.csv, line 2, column 1: \"Gr?n\" is not UTF-8 text (byte "
			"252); "
			"save the file as CSV in UTF-8" },
		{ "a torn character at the end of a field", BYTES("\xE2\x96,b\n"),
			"t.csv, line 1, column 1: \"?\?\" is not UTF-8 text (byte "
			"226); "
			"save the file as CSV in UTF-8" },
		{ "a torn character at the end of the file", BYTES("b,\xC3"),
			"t.csv, line 1, column 2: \"?\" is not UTF-8 text (byte 195); "
			"save the file as CSV in UTF-8" },
		{ "UTF-16",
			BYTES("\xFF\xFE"
			      "a\0\n\0"),
			"t.csv, line 1, column 1: \"??a\" is not UTF-8 text (byte "
			"255); "
			"save the file as CSV in UTF-8" },
		{ "torn within quotes", BYTES("\"a\n\xC3\"\n"),
			"t.csv, line 2, column 1: \"a\" is not UTF-8 text (byte 195); "
			"save the file as CSV in UTF-8" },
		{ "an escape character", BYTES("a,\x1B[2J,b\n"),
			"t.csv, line 1, column 2: \"?[2J\" holds the control character "
			"27; only "
			"text and tabs may stand there" },
		{ "DEL", BYTES("\x7F\n"),
			"t.csv, line 1, column 1: \"?\" holds the control character "
			"127; only "
			"text and tabs may stand there" },
		{ "a C1 control",
			BYTES("a\xC2\x9B"
			      "b\n"),
			"t.csv, line 1, column 1: \"a?b\" holds the control character "
			"155; only "
			"text and tabs may stand there" },
		{ "a control character in quotes", BYTES("\"a,\x01\"\n"),
			"t.csv, line 1, column 1: \"a,?\" holds the control character "
			"1; only "
			"text and tabs may stand there" },
		{ "a carriage return alone", BYTES("a\rb\n"),
			"t.csv, line 1, column 1: \"a\" holds the control character "
			"13; only "
			"text and tabs may stand there" },
		{ "an unclosed quote", BYTES("a\nb,\"c\n"),
			"1[a]t.csv, line 2, column 2: the quote before \"c\" is not "
			"closed; end "
			"the value with a quote" },
		{ "one that opens on a later line", BYTES("\"a\nb\",\"c\nd\n"),
			"t.csv, line 2, column 2: the quote before \"c\" is not "
			"closed; end the "
			"value with a quote" },
		{ "a quote at the end of the file", BYTES("a,\""),
			"t.csv, line 1, column 2: the quote before \"\" is not closed; "
			"end the "
			"value with a quote" },
		{ "text after a closing quote", BYTES("\"a\"b,c\n"),
			"t.csv, line 1, column 1: \"b\" stands behind a closing quote; "
			"write a "
			"quote inside a value twice" },
		{ "a blank after a closing quote", BYTES("x,\"a\" ,c\n"),
			"t.csv, line 1, column 2: \" \" stands behind a closing quote; "
			"write a "
			"quote inside a value twice" },
		{ "a quote in the middle", BYTES("a\nx,5\" card,c\n"),
			"1[a]t.csv, line 2, column 2: a quote stands inside \"5\" "
			"card\"; put the "
			"whole value in quotes and write that quote twice" },
		{ "a blank before a quote", BYTES(" \"a\"\n"),
			"t.csv, line 1, column 1: a quote stands inside \" \"a\"\"; "
			"put the whole "
			"value in quotes and write that quote twice" },
		{ "the first of two", BYTES("\x02,\xFF\n"),
			"t.csv, line 1, column 1: \"?\" holds the control character 2; "
			"only text "
			"and tabs may stand there" },
	};

	(void)state;
	check_readings(row, sizeof row / sizeof *row);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(csv_reads_the_examples_of_rfc_4180),
		cmocka_unit_test(csv_reads_what_spreadsheets_write),
		cmocka_unit_test(csv_names_place_and_cure_of_what_is_bad),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
