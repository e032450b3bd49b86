/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/unread-list.h"

#include "command/asked.h"
#include "command/commands.h"
#include "files/unread.h"

void
spelch_unread_write (SpelchWriter *writer, const GPtrArray *unread)
{
  spelch_writer_open_list (writer, "unread");
  for (guint i = 0; i < unread->len; i++)
    {
      const SpelchUnread *one = unread->pdata[i];
      spelch_writer_open_item (writer, NULL, false);
      spelch_writer_text (writer, "at", one->at);
      spelch_writer_text (writer, "member", one->member);
      if (one->nearest != NULL)
        spelch_writer_text (writer, "nearest", one->nearest);
      else
        spelch_writer_null (writer, "nearest");
      spelch_writer_text (writer, "sentence", one->sentence);
      spelch_writer_close (writer);
    }
  spelch_writer_close (writer);
}

void
spelch_unread_print (const GPtrArray *unread)
{
  for (guint i = 0; i < unread->len; i++)
    g_print ("%s\n", ((const SpelchUnread *)unread->pdata[i])->sentence);
}

int
spelch_unread_refuse (const GPtrArray *unread, const GError *error, gboolean json)
{
  if (!json)
    spelch_unread_print (unread);
  return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
}
