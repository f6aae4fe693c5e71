insert into trip_vehicle (vehicle_file) values (:vehicleFile)
