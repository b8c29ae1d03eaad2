#include "pager.h"

#include "base/mem.h"

#include <stdlib.h>
#include <string.h>

int pager_lines(const char *text)
{
	int n = 0;

	for (; (text = strchr(text, '\n')); text++)
		n++;
	return n;
}

static void new_page(struct pager *p)
{
	p->pages = mem_grow(p->pages, &p->cap, p->n + 1, sizeof *p->pages);
	p->pages[p->n++] = (struct buf){ 0 };
	p->used = 0;
	if (p->titles.n == 0)
		return;
	buf_add(&p->pages[p->n - 1], p->titles.text);
	p->used = pager_lines(p->titles.text);
}

static void put(struct pager *p, const char *text, size_t n, int lines)
{
	if (p->n == 0 || p->used + lines > p->room)
		new_page(p);
	buf_add_n(&p->pages[p->n - 1], text, n);
	p->used += lines;
}

void pager_add(struct pager *p, struct buf *chunk)
{
	const char *text = chunk->text ? chunk->text : "", *end;
	int lines = pager_lines(text);

	if (lines <= p->room - (p->titles.n ? pager_lines(p->titles.text) : 0))
		put(p, text, chunk->n, lines);
	else
		for (; (end = strchr(text, '\n')); text = end + 1)
			put(p, text, (size_t)(end + 1 - text), 1);
	buf_clear(chunk);
}

void pager_titles(struct pager *p, const char *titles)
{
	buf_clear(&p->titles);
	buf_add(&p->titles, titles ? titles : "");
}

int pager_left(const struct pager *p)
{
	return p->room - p->used;
}

void pager_free(struct pager *p)
{
	for (size_t i = 0; i < p->n; i++)
		buf_free(&p->pages[i]);
	free(p->pages);
	buf_free(&p->titles);
	*p = (struct pager){ 0 };
}
