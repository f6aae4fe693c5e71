insert into road_quiet (latitude_degrees, longitude_degrees, radius_metres)
values (:latitudeDegrees, :longitudeDegrees, :radiusMetres)
