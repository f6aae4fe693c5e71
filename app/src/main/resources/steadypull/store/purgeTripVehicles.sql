delete from trip_vehicle where vehicle_key not in (select vehicle_key from trip)
