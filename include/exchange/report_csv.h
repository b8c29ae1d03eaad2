/* report_csv.h - answers as CSV for another program. Words and numbers are those of
 * the book's files, never translated but for proof's; every text begins with a row of
 * column names. */
#ifndef EXCHANGE_REPORT_CSV_H
#define EXCHANGE_REPORT_CSV_H

#include "answers/dd_table.h"
#include "answers/due.h"
#include "answers/flight.h"
#include "answers/hotspots.h"
#include "answers/proof.h"
#include "answers/record.h"
#include "answers/verdicts.h"
#include "base/buf.h"

/* One row per trap or block and rule that applies, one with verdict none where none
 * does. catch_lo and catch_hi bound what was compared (moths per week, per night or in
 * all, as the measure says; per week where there is no rule); an empty catch_hi is
 * open. doubts: separated by "; ", first what an unknown lacks. */
void week_csv(const struct log *l, const struct verdict_rows *rows, struct buf *out);

/* One row per lure and card that is due by the next run. no_entry_until: of its block,
 * ISO 8601 with offset; "unknown"; empty: free. */
void due_csv(const struct due *d, struct buf *out);

/* One row per day, in the unit asked. min and max as read (empty: not read; with a dd
 * all the same, the day is filled from its neighbours); dd is empty for a missing day;
 * missing: such days so far. */
void dd_csv(const struct dd_table *t, struct buf *out);

/* One row per flight, under the names of flight_csv_head: farm and block are empty when
 * all are taken together; dates are ISO, `first` and `peak_week` the first days of
 * their weeks; peak_catch in moths per trap and week; flags: words of season/flights.h,
 * separated by "; ". */
void flight_csv_head(struct buf *out);
void flight_csv(const struct log *l, const struct flight_view *v, struct buf *out);

/* One row per treatment; from, until and entry_from are ISO 8601 with offset. What was
 * not entered is empty; not_entered: the fields that 7 CFR 110.3 asks for, as the
 * person reads them. */
void record_csv(const struct record *r, struct buf *out);

/* One row per block, border, neighbourhood (near), trap and source, under the names of
 * hotspots_csv_head. `farm` and a colon stand before each name unless it is "". What
 * was not tested, is not known or has no bound is empty. Of a source ratio is that of
 * the catch 100 m farther away, p_shuffle that of the order of catch and distance.
 * says: words of season/hotspot.h, of a source those of season/gradient.h. */
void hotspots_csv_head(struct buf *out);
void hotspots_csv(const struct hot_view *v, const char *farm, struct buf *out);

/* One row per published case: id, source, printed, remark, rule, input, expected, ours,
 * holds (yes or no). Here texts are as the person reads them. */
void proof_csv(const struct proof_case *cases, size_t n, struct buf *out);

#endif
