insert into trip_channel (trip_key, channel_key, position) values (:tripKey, :channelKey, :position)
