select vehicle_key from trip_vehicle where vehicle_file = :vehicleFile
