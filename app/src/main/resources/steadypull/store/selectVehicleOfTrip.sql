select trip_vehicle.vehicle_file
from trip
join trip_vehicle on trip_vehicle.vehicle_key = trip.vehicle_key
where trip.id = :id and trip.removed = 0
