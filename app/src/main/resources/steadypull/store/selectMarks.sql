select trip.id, event.detail
from event
join trip on trip.trip_key = event.trip_key
where event.kind = 'mark' and trip.removed = 0
