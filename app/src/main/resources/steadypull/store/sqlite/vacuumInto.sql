vacuum into ?
