/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/item-name.h"

void
spelch_item_read_name (SpelchFields *fields, char id[SPELCH_ID_SIZE], char name[SPELCH_NAME_SIZE])
{
  spelch_fields_text (fields, "id", id, SPELCH_ID_SIZE);
  g_strlcpy (name, id, SPELCH_NAME_SIZE);
  spelch_fields_text (fields, "name", name, SPELCH_NAME_SIZE);
}

void
spelch_item_write_name (SpelchWriter *writer, const char *id, const char *name)
{
  spelch_writer_text (writer, "id", id);
  if (!g_str_equal (name, id))
    spelch_writer_text (writer, "name", name);
}
