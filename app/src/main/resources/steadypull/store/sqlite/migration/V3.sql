-- Samples lie in compressed segments, a trip tells of itself in one row, and a trip is the same trip in
-- every library. What the older forms held is moved by the program, between this file and V3end.

create table trip_vehicle (
  vehicle_key integer primary key,
  -- a vehicle as it was when trips began; trips share it as long as nothing changed
  vehicle_file text not null
) strict;

alter table trip rename to old_trip;

create table trip (
  trip_key integer primary key,
  id text not null unique,
  -- the trip's own id, the same in every library that holds the trip
  origin text not null unique,
  vehicle_name text not null,
  vehicle_key integer not null references trip_vehicle,
  -- microseconds since 1970-01-01T00:00:00Z
  start_epoch_micros integer not null,
  -- of the local time at the start from UTC; null: nobody knows
  start_offset_seconds integer,
  label text not null,
  note text not null,
  -- one word or phrase a line
  tags text not null,
  -- what was fitted to vehicle and trailer
  fitted text not null,
  -- weather, wind and road in words
  outside text not null,
  -- null: not entered
  outside_celsius real,
  source text not null,
  -- as the adapter called itself, the bus's protocol, and a hash of the vehicle's number; empty: not told
  adapter text not null default '',
  protocol text not null default '',
  vehicle_number_hash text not null default '',
  software_version text not null,
  -- up to here the trip is durable; its end once it is sealed
  reached_micros integer not null default 0,
  last_sample_micros integer not null default 0,
  sample_count integer not null default 0,
  -- null: no vehicle speed, so nobody can tell
  distance_metres real,
  -- keys of the trip's channels, separated by blanks; a segment counts them from 0
  channel_keys text not null default '',
  -- from-to in microseconds, separated by blanks
  gaps text not null default '',
  sealed integer not null default 0 check (sealed in (0, 1)),
  -- 1: thrown away, and to be had back until the library is closed; 2: to be forgotten
  removed integer not null default 0 check (removed in (0, 1, 2))
) strict;

-- A second telling of each trip that has ended, on pages of its own: what a damaged page takes of the
-- first is salvaged from here. Nothing else reads it. The last column tells it from a trip.
create table trip_twin (
  trip_key integer primary key references trip,
  id text not null,
  origin text not null,
  vehicle_name text not null,
  vehicle_key integer not null,
  start_epoch_micros integer not null,
  start_offset_seconds integer,
  label text not null,
  note text not null,
  tags text not null,
  fitted text not null,
  outside text not null,
  outside_celsius real,
  source text not null,
  adapter text not null,
  protocol text not null,
  vehicle_number_hash text not null,
  software_version text not null,
  reached_micros integer not null,
  last_sample_micros integer not null,
  sample_count integer not null,
  distance_metres real,
  channel_keys text not null,
  gaps text not null,
  sealed integer not null,
  removed integer not null,
  twin integer not null check (twin = 1)
) strict;

-- While a trip is recorded one row a commit, afterwards one row for some ten minutes of driving.
create table segment (
  segment_key integer primary key,
  trip_key integer not null references trip,
  -- how many samples of the trip come before
  first_sample integer not null,
  sample_count integer not null,
  first_micros integer not null,
  last_micros integer not null,
  samples blob not null,
  unique (trip_key, first_sample)
) strict;

-- Beside each long segment what a coarse drawing needs of it.
create table overview (
  overview_key integer primary key,
  trip_key integer not null references trip,
  first_sample integer not null,
  buckets blob not null,
  unique (trip_key, first_sample)
) strict;

alter table event rename to old_event;

create table event (
  event_key integer primary key,
  trip_key integer not null references trip,
  -- counts the events of a trip from 0
  sequence integer not null,
  -- how many samples of the trip were accepted before
  after_samples integer not null,
  time_micros integer not null,
  kind text not null,
  detail text not null,
  unique (trip_key, sequence)
) strict;

create table route (
  route_key integer primary key,
  id text not null unique,
  name text not null,
  -- GPX 1.1
  route_file text not null
) strict;

-- How foreign tables are read, one for each line of headers.
create table table_mapping (
  header_line text primary key,
  mapping_file text not null
) strict;
