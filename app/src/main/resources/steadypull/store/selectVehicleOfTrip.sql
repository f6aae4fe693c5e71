select vehicle_file from trip where id = :id
