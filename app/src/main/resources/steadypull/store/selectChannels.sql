select channel_key, id, unit from channel
