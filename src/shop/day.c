/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/day.h"

#include <string.h>

void
spelch_day_today (char day[SPELCH_DATE_SIZE])
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *text = g_date_time_format (now, "%Y-%m-%d");
  memset (day, 0, SPELCH_DATE_SIZE);
  g_strlcpy (day, text, SPELCH_DATE_SIZE);
}
