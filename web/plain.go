package web

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"net"
	"net/http"
	"time"
)

// sendOnListener takes connections for TLS and sends whoever speaks plain HTTP
// on to https: people type addresses without it.
type sendOnListener struct{ net.Listener }

func (l sendOnListener) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	if err != nil {
		return nil, err
	}
	return &sendOnConn{Conn: c}, nil
}

// sendOnConn looks at the first byte that is read.
type sendOnConn struct {
	net.Conn
	seen bool
}

// handshake is the first byte of every TLS connection (RFC 8446, 5.1).
const handshake = 0x16

func (c *sendOnConn) Read(p []byte) (int, error) {
	n, err := c.Conn.Read(p)
	if n > 0 && !c.seen {
		c.seen = true
		if p[0] != handshake {
			c.sendOn(p[:n])
			return 0, io.EOF
		}
	}
	return n, err
}

// sendOn answers the request that begins so.
func (c *sendOnConn) sendOn(start []byte) {
	_ = c.SetDeadline(time.Now().Add(5 * time.Second))
	rest := io.LimitReader(io.MultiReader(bytes.NewReader(start), c.Conn), 64<<10)
	r, err := http.ReadRequest(bufio.NewReader(rest))
	if err != nil || r.Host == "" {
		return
	}
	_, _ = fmt.Fprintf(c.Conn, "HTTP/1.1 307 Temporary Redirect\r\nLocation: https://%s%s\r\nContent-Length: 0\r\nConnection: close\r\n\r\n", r.Host, r.URL.RequestURI())
}
