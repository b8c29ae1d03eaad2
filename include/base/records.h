/* records.h - the plain records that the book keeps and the season reads. Values:
 * copied by =, no pointers into anything. An id is a row of the book, > 0; 0 = none. */
#ifndef BASE_RECORDS_H
#define BASE_RECORDS_H

#include "base/acts.h"
#include "base/day.h"
#include "base/kinds.h"
#include "base/orchard.h"
#include "base/rule.h"
#include "base/source.h"
#include "base/visit.h"
#include "base/weather.h"

#endif
