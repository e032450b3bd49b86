/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/drafting.h"

void
spelch_drafting_show (SpelchDrafting *drafting, SpelchPart *part, const char *name)
{
  if (!spelch_drafting_is_under_way (drafting))
    spelch_session_begin (drafting->session);
  drafting->under_way = true;
  spelch_session_edit (drafting->session, part, name, NULL);
}

/* The gesture is taken back first: outside one a suggested bit is chosen anew for what was entered. */
void
spelch_drafting_enter (SpelchDrafting *drafting, SpelchPart *part, const char *name, const char *merge)
{
  spelch_drafting_drop (drafting);
  spelch_session_edit (drafting->session, part, name, merge);
}

void
spelch_drafting_drop (SpelchDrafting *drafting)
{
  if (spelch_drafting_is_under_way (drafting))
    spelch_session_cancel (drafting->session);
  drafting->under_way = false;
}

bool
spelch_drafting_is_under_way (SpelchDrafting *drafting)
{
  drafting->under_way = drafting->under_way && spelch_session_in_gesture (drafting->session);
  return drafting->under_way;
}
