update trip_heat set told = '' where vehicle_name = :name and told <> ''
