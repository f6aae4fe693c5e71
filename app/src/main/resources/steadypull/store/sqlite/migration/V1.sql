-- The first form of a trip library. Times inside a trip are microseconds since its start.
-- application_id marks the file as ours: the letters STPL.

pragma application_id = 1398034508;

create table vehicle (
  name text primary key,
  vehicle_file text not null,
  -- counts up with every use: the highest was used last
  used_order integer not null
) strict;

create table trip (
  trip_key integer primary key,
  id text not null unique,
  vehicle_name text not null,
  -- the vehicle as it was when the trip began
  vehicle_file text not null,
  -- microseconds since 1970-01-01T00:00:00Z
  start_epoch_micros integer not null,
  label text not null,
  source text not null,
  software_version text not null,
  -- up to here the trip is durable; its end once it is sealed
  reached_micros integer not null default 0,
  last_sample_micros integer not null default 0,
  sample_count integer not null default 0,
  -- null: no vehicle speed, so nobody can tell
  distance_metres real,
  sealed integer not null default 0 check (sealed in (0, 1))
) strict;

create table channel (
  channel_key integer primary key,
  id text not null,
  unit text not null,
  unique (id, unit)
) strict;

create table trip_channel (
  trip_key integer not null references trip,
  channel_key integer not null references channel,
  position integer not null,
  primary key (trip_key, position)
) strict;

create table gap (
  trip_key integer not null references trip,
  from_micros integer not null,
  to_micros integer not null,
  primary key (trip_key, from_micros)
) strict;

-- Samples and events of a trip share one sequence, so that they come back in the order in which
-- they were accepted. Samples lie here while a trip is recorded; a sealed trip may keep ranges of
-- its sequence in another form, which a later version adds beside this table.
create table sample (
  trip_key integer not null references trip,
  sequence integer not null,
  time_micros integer not null,
  channel_key integer not null references channel,
  value real not null,
  primary key (trip_key, sequence)
) strict, without rowid;

create table event (
  trip_key integer not null references trip,
  sequence integer not null,
  time_micros integer not null,
  kind text not null,
  detail text not null,
  primary key (trip_key, sequence)
) strict, without rowid;
