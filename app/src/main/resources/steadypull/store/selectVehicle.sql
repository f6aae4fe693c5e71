select vehicle_file from vehicle where name = :name
