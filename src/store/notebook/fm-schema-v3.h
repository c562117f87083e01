/* fm-schema-v3.h - hidden parts and copies of sealed tastings; see the .c file */
#pragma once

extern const char fm_schema_v3_sql[];
