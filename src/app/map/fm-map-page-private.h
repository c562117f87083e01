/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-page-private.h - parts of the Map page that its files share */
#pragma once

#include <adwaita.h>

#include "app/map/fm-map-components.h"
#include "app/map/fm-map-page.h"
#include "app/map/fm-map-query.h"
#include "app/map/fm-map-reading.h"
#include "app/map/fm-map-trials.h"

G_BEGIN_DECLS

struct _FmMapPage {
  FmPage parent_instance;

  AdwToastOverlay *toast_overlay;
  GtkStack *stack;
  AdwStatusPage *empty_page;
  GtkDropDown *map_drop_down;
  GtkEntry *name_entry;
  FmMapComponents *components;
  FmMapTrials *trials;
  FmMapReading *reading;

  gint64 blend_id;    /* whose maps are listed */
  FmMapList *list;    /* (nullable) */
  GArray *shown_ids;  /* gint64, the maps in the order of map_drop_down */
  GHashTable *hidden; /* gint64: removed, while that can be undone */
  FmMapDocument *document;
  gint64 wanted_id; /* the map to show once the list is read; 0 = any */
  GCancellable *listing;
  GCancellable *opening;
  gboolean stale;
  gboolean loading; /* controls change by program, not by the user */
};

/* fm-map-page.c */
/** Lets the shown map go; what was typed last is stored first. */
void fm_map_page_close_map (FmMapPage *self);
/** Shows the maps that were read, without the hidden ones. */
void fm_map_page_show_list (FmMapPage *self);

/* fm-map-page-acts.c */
gboolean fm_map_page_can_add (FmMapPage *self);
void fm_map_page_install_acts (GtkWidgetClass *widget_class);

G_END_DECLS
