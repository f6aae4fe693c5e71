-- What the library knows of roads, so that it looks ahead where somebody has been. Positions: none of it
-- goes along in a trip's file or an export.

create table road_tile (
  -- a square of the earth, numbered by the memory of roads
  tile_key integer primary key,
  -- pieces of road with their grades; carries a check of its own
  tile blob not null
) strict;

-- Trips that the memory of roads has looked at. They stay here when the trip is thrown away or the memory
-- is cleared: nothing is learned twice, and nothing that was forgotten is learned anew.
create table road_learned (
  learned_key integer primary key,
  -- the trip's own id
  origin text not null unique,
  -- passes over roads that were learned from it; 0: there was nothing to learn
  passes integer not null
) strict;

-- Circles in which nothing is remembered, now and later.
create table road_quiet (
  quiet_key integer primary key,
  latitude_degrees real not null,
  longitude_degrees real not null,
  radius_metres real not null
) strict;

-- Climbs that were recognised, so that one keeps its id in every trip.
create table climb (
  climb_key integer primary key,
  id text not null unique,
  -- as people call it; empty: nobody has named it
  name text not null,
  -- where it lies, with a check of its own
  line blob not null,
  length_metres real not null,
  rise_metres real not null
) strict;
