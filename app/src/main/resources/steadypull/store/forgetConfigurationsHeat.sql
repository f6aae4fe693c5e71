update configuration set learnt = '' where vehicle_name = :name
