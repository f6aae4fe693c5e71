select trip_channel.trip_key, channel.id, channel.unit
from trip_channel
join channel on channel.channel_key = trip_channel.channel_key
join trip on trip.trip_key = trip_channel.trip_key
where substr(trip.id, 1, length(:prefix)) = :prefix
order by trip_channel.trip_key, trip_channel.position
