delete from configuration where vehicle_name = :name
