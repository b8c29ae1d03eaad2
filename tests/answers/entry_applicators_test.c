/* Who applied a treatment, on the form of a new one. */
#include "act_forms.h"

/* Who applied it is asked for by law: it is offered, never filled in. */
static void a_new_treatment_offers_who_applied_the_ones_before(void **state)
{
	static const char *const who[][2] = { { "J. Quill", "Q-17" },
		{ "R. Sedge", "S-2" }, { "J. Quill", "Q-18" }, { "", "" } };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	for (size_t i = 0; i < sizeof who / sizeof *who; i++) {
		struct treatment t = acts_treatment(&f, "2026-07-02 10:30", 12, 14);
		t.day += (int32_t)i;
		t.from = t.until = treatment_blank.until;
		text_copy(t.applicator, sizeof t.applicator, who[i][0]);
		text_copy(t.certificate, sizeof t.certificate, who[i][1]);
		acts_put(&f, t);
	}
	acts_read(&f, "2026-07-10 12:00");
	struct entry *r = form_new(f.book, &f.log, ENTRY_TREATMENTS);
	assert_string_equal(form_text(r, "applicator"), "");
	assert_string_equal(form_text(r, "certificate"), "");
	form_choices_are(&f.log, r, "applicator", "J. Quill|R. Sedge", false);
	form_choices_are(&f.log, r, "certificate", "Q-17|S-2|Q-18", false);
	form_type(r, "applicator", "J. Quill");
	form_choices_are(&f.log, r, "certificate", "Q-17|Q-18", false);
	free(r);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_new_treatment_offers_who_applied_the_ones_before),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
