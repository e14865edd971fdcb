// Stands at the end of the hosted page: keeps it for the time without network.
if ("serviceWorker" in navigator) navigator.serviceWorker.register("sw.js").catch(() => { /* then it needs the network */ });
