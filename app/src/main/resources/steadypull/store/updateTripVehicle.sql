update trip set vehicle_key = :vehicleKey where id = :id and removed = 0
