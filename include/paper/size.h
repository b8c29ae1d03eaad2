/* size.h - the papers that a sheet is set for. */
#ifndef PAPER_SIZE_H
#define PAPER_SIZE_H

enum paper { PAPER_A4, PAPER_LETTER };

#endif
