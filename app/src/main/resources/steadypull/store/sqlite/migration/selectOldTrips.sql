select trip_key from old_trip order by trip_key
