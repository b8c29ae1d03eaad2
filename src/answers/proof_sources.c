/* proof_sources.c - what is printed where: every statement was read at its source. The
 * ids are those of share/thresholds.csv. */
#include "base/words.h"
#include "proof_parts.h"

#define NIAB_CM "NIAB, UK. Monitoring (codling moth). niab.com/monitoring-codling-moth"
#define NIAB_TORTRIX                                                                   \
	"NIAB, UK. Pheromone traps, shoot damage (tortrix page). niab.com/node/2221"
#define RUTGERS_2020                                                                   \
	"Rutgers Plant & Pest Advisory. Fruit IPM for 7/7/20. "                        \
	"plant-pest-advisory.rutgers.edu"
#define RUTGERS_2012                                                                   \
	"Rutgers Cooperative Extension. Peach IPM Report, 24 April 2012. Polk, "       \
	"Schmitt, "                                                                    \
	"Rizio, Atanassov. jerseyfruitagupdates.blogspot.com"
#define EMILIA_1996                                                                    \
	"Regione Emilia-Romagna production rules 1996, as reposted. "                  \
	"disinfestazioni.info"
#define VERMONT                                                                        \
	"University of Vermont Extension, Vermont apple IPM, 19 June 2022. "           \
	"blog.uvm.edu/fruit"

const struct published published_thresholds[] = {
	{ "CM1",
		"Washington State University Tree Fruit. Monitoring and identification "
		"(codling moth). Brunner 1993, rev. 2018. "
		"treefruit.wsu.edu/monitoring-and-identification",
		N_("2 or more in a trap in each of two weeks running is its threshold"),
		0 },
	{ "CM2", NIAB_CM, N_("5 or more a trap in a week, May to July"), UNSAID },
	{ "CM3", NIAB_CM, N_("3 a trap in a week, August and September"),
		BARE | UNSAID },
	{ "CM4",
		"Wisconsin DATCP Pest Bulletin 62(9), 22 June 2017. "
		"datcpservices.wisconsin.gov",
		N_("5 or more a trap in a week is an economic capture"), UNSAID },
	{ "CM5",
		"Wisconsin DATCP Pest Bulletin 58(7), 13 June 2013. "
		"datcpservices.wisconsin.gov",
		N_("5 or more a trap is an economic count"), UNSAID | WEEK },
	{ "CM6", RUTGERS_2020,
		N_("3-5 or more a trap, second generation: the low end, 3"),
		UNSAID | WEEK },
	{ "CM7", RUTGERS_2020,
		N_("3-5 or more a trap, second generation: the high end, 5"),
		UNSAID | WEEK },
	{ "CM8",
		"NC State Extension. WNC Orchard Insect Populations, 10 July 2018. "
		"apples.ces.ncsu.edu",
		N_("disrupted blocks: cumulative catch of the second generation over 3 "
		   "a trap, orchard average"),
		0 },
	{ "CM9", EMILIA_1996, N_("2 a trap in a week"), BARE | UNSAID },
	{ "CM10", EMILIA_1996, N_("2 a trap in two weeks together"), BARE | UNSAID },
	{ "CM11",
		"Poland, state plant-protection signalling service, codling moth "
		"notice, 21 May 2024. sygnalizacja.agrofagi.com.pl",
		N_("a mean of 5 or more a day over 3-4 days running"), 0 },
	{ "OFM1", RUTGERS_2012, N_("6-8 a trap: the low end, 6"),
		BARE | UNSAID | WEEK },
	{ "OFM2", RUTGERS_2012, N_("6-8 a trap: the high end, 8"),
		BARE | UNSAID | WEEK },
	{ "OFM3",
		"University of Georgia advice in a Clemson Extension news article, "
		"2021. scnow.com",
		N_("10 or more in one trap, checked weekly"), 0 },
	{ "OFM4",
		"NC State. Western NC Orchard Pest Populations, 3 August 2015. "
		"ipm.ces.ncsu.edu",
		N_("exceeding about 5 a trap, August"), UNSAID | WEEK },
	{ "SFT1", NIAB_TORTRIX, N_("30 a trap in a week: the orchard has a problem"),
		BARE | UNSAID },
	{ "SFT2", NIAB_TORTRIX,
		N_("over 5 in a trap starts the temperature sum (ships as timing "
		   "only)"),
		UNSAID | WEEK },
	{ "AM1", VERMONT, N_("red spheres without lure: a mean of 1 or more a trap"),
		WEEK },
	{ "AM2", VERMONT,
		N_("red spheres with apple volatile: a mean of 5 or more a trap"),
		WEEK },
	{ .id = NULL },
};
