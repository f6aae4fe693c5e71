-- Only in a backup: says that it is one.
create table backup (
  -- milliseconds since 1970-01-01T00:00:00Z
  taken_epoch_millis integer not null
) strict;
