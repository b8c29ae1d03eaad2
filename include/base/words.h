/* words.h - every sentence a person sees goes through _(), so that a catalogue of
 * another language can be added without touching code. N_() marks a text that
 * stands in a table and is translated where it is shown. */
#ifndef BASE_WORDS_H
#define BASE_WORDS_H

#include <libintl.h>

#define _(text) gettext(text)
#define N_(text) text

#endif
