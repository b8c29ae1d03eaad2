/* season_text.h - inside src/paper: the parts of the season page's text. */
#ifndef PAPER_SEASON_TEXT_H
#define PAPER_SEASON_TEXT_H

#include "base/buf.h"
#include "paper/season.h"

/* Both seasons' weeks as marks, on one scale; nothing where nobody looked. */
void season_text_lines(const struct season_page *p, const struct season_chart *c,
	int cols, struct buf *out);

#endif
