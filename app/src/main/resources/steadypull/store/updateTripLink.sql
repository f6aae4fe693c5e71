update trip
set adapter = :adapter, protocol = :protocol, vehicle_number_hash = :vehicleNumberHash
where trip_key = :tripKey
