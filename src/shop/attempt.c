/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/attempt.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>

static char *
fault_of_when (const char *when)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = *when == '\0' ? NULL : g_date_time_new_from_iso8601 (when, zone);
  if (*when == '\0' || time != NULL)
    return NULL;
  return g_strdup_printf (_ ("when (\"%s\") isn't a time; write it as 2026-05-31T14:05:00."), when);
}

char *
spelch_attempt_fault (const SpelchAttempt *attempt)
{
  char *fault = spelch_fault_text ("learner", attempt->learner, sizeof attempt->learner)
                    ?: spelch_fault_id ("exercise", attempt->exercise, false)
                    ?: spelch_fault_text ("answer", attempt->answer, sizeof attempt->answer)
                    ?: spelch_fault_text ("model_version", attempt->model_version, sizeof attempt->model_version)
                    ?: fault_of_when (attempt->when);
  if (fault == NULL && *attempt->learner == '\0')
    fault = g_strdup (_ ("learner is empty; write a name."));
  if (fault == NULL && *attempt->answer == '\0')
    fault = g_strdup (_ ("answer is empty; write what was answered."));
  return fault;
}

void
spelch_attempt_now (char when[SPELCH_WHEN_SIZE])
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *text = g_date_time_format (now, "%Y-%m-%dT%H:%M:%S");
  g_strlcpy (when, text, SPELCH_WHEN_SIZE);
}

SpelchProgress
spelch_attempts_progress (const GArray *attempts, const char *learner, const char *exercise)
{
  SpelchProgress progress = { 0 };
  for (guint i = 0; i < attempts->len; i++)
    {
      const SpelchAttempt *one = &g_array_index (attempts, SpelchAttempt, i);
      if ((learner != NULL && !g_str_equal (one->learner, learner))
          || (exercise != NULL && !g_str_equal (one->exercise, exercise)))
        continue;
      progress.tried++;
      progress.right += one->right ? 1 : 0;
      if (!one->follow_up)
        progress.last_right = one->right;
    }
  return progress;
}
