begin immediate
