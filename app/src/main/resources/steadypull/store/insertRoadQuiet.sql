insert into road_quiet (latitude_degrees, longitude_degrees, radius_metres)
select :latitudeDegrees, :longitudeDegrees, :radiusMetres
where not exists (
  select 1 from road_quiet
  where latitude_degrees = :latitudeDegrees
    and longitude_degrees = :longitudeDegrees
    and radius_metres = :radiusMetres
)
