-- What the library knows of vehicles' heat: how they were fitted, and what each trip has told.

create table configuration (
  configuration_key integer primary key,
  vehicle_name text not null,
  -- what was fitted, in the owner's words; empty: as the vehicle came
  fitted text not null,
  -- trips that begin from here on belong to it; microseconds since 1970-01-01T00:00:00Z
  since_epoch_micros integer not null,
  -- the circuits that the fitting may have changed, a word a line
  touched text not null,
  -- what it knows besides its trips here, from a vehicle file, as JSON; empty: nothing
  learnt text not null,
  unique (vehicle_name, since_epoch_micros)
) strict;

-- One row for each trip that was looked at, so that none counts twice. What is known of a vehicle is the
-- sum of its rows. They stay here when the trip is thrown away.
create table trip_heat (
  heat_key integer primary key,
  -- the trip's own id
  origin text not null unique,
  vehicle_name text not null,
  start_epoch_micros integer not null,
  -- what the trip has told by itself, as JSON; empty: nothing, or it was forgotten
  told text not null,
  -- a vehicle's trips are read in their order
  unique (vehicle_name, start_epoch_micros, origin)
) strict;
