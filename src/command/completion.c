/* completion.c - what shells complete, made from the table of commands: the synopsis of
 * each says its options, which of them take a value, and what its words are. */
#include "base/words.h"
#include "command/command.h"
#include "exchange/exchange.h"

#include <ctype.h>
#include <string.h>

/* One piece of a synopsis: "--farm", "FARM", "a4|letter". */
struct piece {
	char text[48]; /* without brackets */
	bool ends;     /* a bracket closes behind it: no value follows */
};

/* What a command takes. */
struct takes {
	struct buf options, words; /* blank between them */
	struct buf values;         /* lines of a case: what follows an option */
	bool files;
};

/* The next piece from *at on; false at the end. */
static bool next_piece(const char **at, struct piece *p)
{
	const char *from = *at + strspn(*at, " [(");
	size_t n = strcspn(from, " ])");

	if (n == 0 || n >= sizeof p->text)
		return false;
	memcpy(p->text, from, n);
	p->text[n] = '\0';
	p->ends = from[n] == ']' || from[n] == ')';
	*at = from + n + strspn(from + n, "])");
	return true;
}

static void add_word(struct buf *out, const char *word)
{
	const char *there = out->n ? strstr(out->text, word) : NULL;
	size_t n = strlen(word);

	if (there && (there == out->text || there[-1] == ' ') &&
		(there[n] == ' ' || there[n] == '\0'))
		return;
	buf_addf(out, "%s%s", out->n ? " " : "", word);
}

static bool is_file(const char *name)
{
	return strcmp(name, "FILE") == 0 || strcmp(name, "BACKUP") == 0;
}

/* A name in capitals stands for a value. */
static bool is_name(const char *text)
{
	return isupper((unsigned char)text[0]) != 0;
}

/* "a4|letter" as words: "a4 letter" */
static void split_words(char *text)
{
	for (; *text; text++)
		if (*text == '|')
			*text = ' ';
}

static void add_value(
	const char *command, const char *option, char *value, struct takes *t)
{
	buf_addf(&t->values, "\t%s/%s) ", command, option);
	split_words(value);
	if (is_file(value))
		buf_add(&t->values, "_mothtally_files; ");
	else if (!is_name(value))
		buf_addf(&t->values, "_mothtally_words '%s'; ", value);
	buf_add(&t->values, "return ;;\n");
}

static void add_free_word(char *text, struct takes *t)
{
	split_words(text);
	if (strcmp(text, "KIND") == 0)
		for (size_t i = 0; kinds[i]; i++)
			add_word(&t->words, kinds[i]->name);
	else if (is_file(text))
		t->files = true;
	else if (islower((unsigned char)text[0]))
		add_word(&t->words, text);
}

static void read_synopsis(const struct command *c, struct takes *t)
{
	const char *at = c->synopsis;
	struct piece p;

	while (next_piece(&at, &p)) {
		bool value_follows =
			!p.ends && at[0] == ' ' && isalnum((unsigned char)at[1]);
		if (p.text[0] != '-') {
			add_free_word(p.text, t);
			continue;
		}
		struct piece value;
		add_word(&t->options, p.text);
		if (value_follows && next_piece(&at, &value))
			add_value(c->name, p.text, value.text, t);
	}
	add_word(&t->options, "--help");
}

static void add_command(const struct command *c, struct buf *values, struct buf *bodies)
{
	struct takes t = { 0 };

	buf_add(&t.words, "");
	buf_add(&t.values, "");
	read_synopsis(c, &t);
	buf_add(values, t.values.text);
	if (t.words.n)
		buf_addf(values, "\t%s/%s) _mothtally_words '%s %s'; return ;;\n",
			c->name, c->name, t.words.text, t.options.text);
	buf_addf(bodies, "\t%s) _mothtally_words '%s'%s ;;\n", c->name, t.options.text,
		t.files ? "; _mothtally_files" : "");
	buf_free(&t.options);
	buf_free(&t.words);
	buf_free(&t.values);
}

/* The part that both shells read alike: by the command and the word before. */
static void add_cases(struct buf *out)
{
	struct buf values = { 0 }, bodies = { 0 }, names = { 0 };

	for (const struct command *c = commands; c->name; c++) {
		add_command(c, &values, &bodies);
		add_word(&names, c->name);
	}
	buf_addf(out,
		"\tcase $command/$before in\n"
		"\t/--book) _mothtally_files; return ;;\n"
		"\t/--today) return ;;\n"
		"%s\tesac\n"
		"\tcase $command in\n"
		"\t'') _mothtally_words '%s --book --today --help --version' ;;\n"
		"%s\tesac\n",
		values.text, names.text, bodies.text);
	buf_free(&values);
	buf_free(&bodies);
	buf_free(&names);
}

static void add_bash(struct buf *out)
{
	buf_add(out,
		"# bash completion for mothtally, made by: mothtally completion bash\n"
		"_mothtally_words()\n{\n"
		"\tmapfile -t -O \"${#COMPREPLY[@]}\" COMPREPLY \\\n"
		"\t\t< <(compgen -W \"$1\" -- \"$here\")\n}\n"
		"_mothtally_files()\n{\n"
		"\tcompopt -o filenames 2>/dev/null\n"
		"\tmapfile -t -O \"${#COMPREPLY[@]}\" COMPREPLY \\\n"
		"\t\t< <(compgen -f -- \"$here\")\n}\n"
		"_mothtally()\n{\n"
		"\tlocal here=${COMP_WORDS[COMP_CWORD]} i command=\n"
		"\tlocal before=${COMP_WORDS[COMP_CWORD - 1]}\n"
		"\tCOMPREPLY=()\n"
		"\tfor ((i = 1; i < COMP_CWORD; i++)); do\n"
		"\t\tcase ${COMP_WORDS[i]} in\n"
		"\t\t--book | --today) ((++i)) ;;\n"
		"\t\t-*) ;;\n"
		"\t\t*) command=${COMP_WORDS[i]} && break ;;\n"
		"\t\tesac\n"
		"\tdone\n");
	add_cases(out);
	buf_add(out, "}\ncomplete -F _mothtally mothtally\n");
}

static void add_zsh(struct buf *out)
{
	buf_add(out,
		"#compdef mothtally\n"
		"# zsh completion for mothtally, made by: mothtally completion zsh\n"
		"_mothtally_words()\n{\n\tcompadd -- ${=1}\n}\n"
		"_mothtally_files()\n{\n\t_files\n}\n"
		"_mothtally()\n{\n"
		"\tlocal i command= before=$words[CURRENT-1]\n"
		"\tfor ((i = 2; i < CURRENT; i++)); do\n"
		"\t\tcase $words[i] in\n"
		"\t\t--book | --today) ((++i)) ;;\n"
		"\t\t-*) ;;\n"
		"\t\t*) command=$words[i] && break ;;\n"
		"\t\tesac\n"
		"\tdone\n");
	add_cases(out);
	buf_add(out, "}\n_mothtally \"$@\"\n");
}

bool command_completion(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct buf text = { 0 };
	struct args a = { .max = 1 };

	(void)ctx;
	if (!args_read(argc, argv, &a, e))
		return false;
	const char *shell = a.n_rest ? a.rest[0] : "";
	if (strcmp(shell, "bash") == 0)
		add_bash(&text);
	else if (strcmp(shell, "zsh") == 0)
		add_zsh(&text);
	else
		return err_set(
			e, ERR_USAGE, _("name the shell to complete in: bash or zsh"));
	bool ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}
