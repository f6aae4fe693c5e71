-- Comparisons of runs before and after a change, as somebody put them together.

create table comparison (
  comparison_key integer primary key,
  -- as the workshop calls it
  name text not null unique,
  -- when it was last kept; microseconds since 1970-01-01T00:00:00Z
  kept_epoch_micros integer not null,
  -- id of the channel that is compared
  channel_id text not null,
  -- a line for each source in the order told: the word before or after, a blank, the trip or the part of it
  sides text not null,
  -- what was asked of the job and answered, as TOML; empty: nothing
  answers text not null
) strict;
