"""SciPy's side of the comparison: see run. DOP853 on the slow variables by distance (see shot.hpp, which this follows), in plain numbers inside, since arrays of three cost more than they save."""
import csv
import math
import sys
import time
import warnings

import numpy as np
from scipy.integrate import DOP853
from scipy.optimize import brentq

folder = sys.argv[1]
c = {name: float(value) for name, value in csv.reader(open(folder + "/constants.csv"))}
releases = [[float(number) for number in row] for row in csv.reader(open(folder + "/releases.csv"))]
m, R, g, drag = c["mass"], c["radius"], c["gravity"], c["drag"]
I1, I2, I3, d1, d2, d3 = c["I1"], c["I2"], c["I3"], c["d1"], c["d2"], c["d3"]
pins, touch = c["pinsAt"], c["touch"]
smallest = min(I1, I2, I3)
compliance = 1 / m + R * R / smallest


def friction(y):
    t = min(max((y - c["y1"]) / (c["y2"] - c["y1"]), 0.0), 1.0)
    return c["mu1"] + (c["mu2"] - c["mu1"]) * t * t * (3 - 2 * t)


def cross(a, b):
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def dot(a, b):
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def axes(w, x, y, z):
    """Rows of the matrix from ball to lane; the quaternion may have any length."""
    s = 2 / (w * w + x * x + y * y + z * z)
    return ((1 - s * (y * y + z * z), s * (x * y - w * z), s * (x * z + w * y)),
            (s * (x * y + w * z), 1 - s * (x * x + z * z), s * (y * z - w * x)),
            (s * (x * z - w * y), s * (y * z + w * x), 1 - s * (x * x + y * y)))


def to_lane(A, b):
    return dot(A[0], b), dot(A[1], b), dot(A[2], b)


def to_ball(A, x, y, z):
    r, d, u = A
    return x * r[0] + y * d[0] + z * u[0], x * r[1] + y * d[1] + z * u[1], x * r[2] + y * d[2] + z * u[2]


def contact_inertia(A):
    a, b, e = R * A[2][0] + d1, R * A[2][1] + d2, R * A[2][2] + d3
    return (I1 + m * (b * b + e * e), I2 + m * (a * a + e * e), I3 + m * (a * a + b * b), -m * a * b, -m * a * e, -m * b * e), (a, b, e)


def times(J, a):
    xx, yy, zz, xy, xz, yz = J
    return xx * a[0] + xy * a[1] + xz * a[2], xy * a[0] + yy * a[1] + yz * a[2], xz * a[0] + yz * a[1] + zz * a[2]


def solve(J, b):
    xx, yy, zz, xy, xz, yz = J
    cxx, cxy, cxz = yy * zz - yz * yz, xz * yz - xy * zz, xy * yz - xz * yy
    per = 1 / (xx * cxx + xy * cxy + xz * cxz)
    cyy, czz, cyz = xx * zz - xz * xz, xx * yy - xy * xy, xy * xz - xx * yz
    return (per * (cxx * b[0] + cxy * b[1] + cxz * b[2]), per * (cxy * b[0] + cyy * b[1] + cyz * b[2]), per * (cxz * b[0] + cyz * b[1] + czz * b[2]))


class Sliding:
    def __init__(self, A, vx, vy, spin):
        r, d, up = A
        p, q, s = spin
        self.A, self.vx, self.vy, self.spin = A, vx, vy, spin
        self.sx, self.sy = vx - R * dot(d, spin), vy + R * dot(r, spin)
        self.s = math.sqrt(self.sx * self.sx + self.sy * self.sy)
        k = -drag * math.sqrt(vx * vx + vy * vy)
        self.dx, self.dy = k * vx, k * vy
        self.air = cross((d1, d2, d3), to_ball(A, self.dx, self.dy, 0.0))
        self.centripetal = cross(spin, cross(spin, (d1, d2, d3)))
        a, b, e = self.air
        self.free = (((I2 - I3) * q * s - a) / I1, ((I3 - I1) * s * p - b) / I2, ((I1 - I2) * p * q - e) / I3)

    def push(self, ex, ey, mu):
        up = self.A[2]
        x, y, z = to_ball(self.A, -mu * ex, -mu * ey, 1.0)
        arm = self.arm = cross((-R * up[0] - d1, -R * up[1] - d2, -R * up[2] - d3), (x, y, z))
        per = (arm[0] / I1, arm[1] / I2, arm[2] / I3)
        d = (d1, d2, d3)
        N = self.N = m * (g + dot(up, cross(self.free, d)) + dot(up, self.centripetal)) / (1 - m * dot(up, cross(per, d)))
        self.ax, self.ay = (self.dx - mu * N * ex) / m, (self.dy - mu * N * ey) / m
        self.per = per

    def slip_rate(self):
        f, per, N = self.free, self.per, self.N
        rate = (f[0] + N * per[0], f[1] + N * per[1], f[2] + N * per[2])
        swing = cross(rate, (d1, d2, d3))
        e = self.centripetal
        swing = (swing[0] + e[0], swing[1] + e[1], swing[2] + e[2])
        return (self.ax - dot(self.A[0], swing) - R * dot(self.A[1], rate), self.ay - dot(self.A[1], swing) + R * dot(self.A[0], rate))


def slide_motion(v):
    A = axes(*v[7:])
    a = to_ball(A, v[4], v[5], v[6])
    spin = (a[0] / I1, a[1] / I2, a[2] / I3)
    swing = cross(spin, (d1, d2, d3))
    return Sliding(A, v[2] - dot(A[0], swing), v[3] - dot(A[1], swing), spin)


def roll_motion(v):
    A = axes(*v[7:])
    J, sigma = contact_inertia(A)
    spin = solve(J, to_ball(A, v[4], v[5], v[6]))
    return A, J, sigma, spin, R * dot(A[1], spin), -R * dot(A[0], spin)


def finish(v, vx, vy, ax, ay, a, spin):
    w, x, y, z = v[7:]
    p, q, s = spin
    e = 1 / vy
    h = 0.5 * e
    return [e * vx, e, e * ax, e * ay, e * a[0], e * a[1], e * a[2],
            -h * (x * p + y * q + z * s), h * (w * p + y * s - z * q), h * (w * q + z * p - x * s), h * (w * s + x * q - y * p)]


def slide(at, v):
    v = v.tolist()
    k = slide_motion(v)
    k.push(k.sx / k.s, k.sy / k.s, friction(at))
    arm, N, air = k.arm, k.N, k.air
    moment = to_lane(k.A, (N * arm[0] - air[0], N * arm[1] - air[1], N * arm[2] - air[2]))
    return finish(v, k.vx, k.vy, k.ax, k.ay, moment, k.spin)


def roll(at, v):
    v = v.tolist()
    A, J, sigma, spin, vx, vy = roll_motion(v)
    k = -drag * math.sqrt(vx * vx + vy * vy) * R
    d = (d1, d2, d3)
    swing, weight = to_lane(A, cross(spin, d)), to_lane(A, cross(A[2], d))
    carried = cross((vx, vy, 0.0), swing)
    rate = (m * (g * weight[0] - carried[0]) - k * vy, m * (g * weight[1] - carried[1]) + k * vx, m * (g * weight[2] - carried[2]))
    return finish(v, vx, vy, 0.0, 0.0, rate, spin)


def held(A, J, sigma, spin, vx, vy):
    """Force of the contact in rolling, lane frame."""
    k = -drag * math.sqrt(vx * vx + vy * vy)
    air = to_ball(A, k * vx, k * vy, 0.0)
    up, e = A[2], cross(spin, cross(spin, (d1, d2, d3)))
    e = (e[0] + g * up[0], e[1] + g * up[1], e[2] + g * up[2])
    p, q, s = spin
    a, b = cross(up, air), cross(sigma, e)
    rate = solve(J, (R * a[0] + (I2 - I3) * q * s - m * b[0], R * a[1] + (I3 - I1) * s * p - m * b[1], R * a[2] + (I1 - I2) * p * q - m * b[2]))
    a = cross(rate, sigma)
    return to_lane(A, (m * (a[0] + e[0]) - air[0], m * (a[1] + e[1]) - air[1], m * (a[2] + e[2]) - air[2]))


def excess(at, v):
    f = held(*roll_motion(list(v)))
    return math.hypot(f[0], f[1]) - friction(at) * f[2]


def ending(at, v):
    return max(touch - math.hypot(v[0], at - pins), at - pins)


class Shot:
    def __init__(self, release, tolerance):
        x, y, vx, vy, w, qx, qy, qz, *spin = release[:11]
        self.slip_end = min(max(10 * tolerance, 1e-12), 1e-4)
        self.slip_start = min(max(6e-4 * (tolerance / 1e-6) ** (1 / 3), 2e-6), 2e-3)
        self.atol = tolerance * np.array([1, 1 / 8, 1, 1] + 3 * [smallest / R] + 4 * [0.5 / R])
        A = axes(w, qx, qy, qz)
        self.u, self.h = y, 0.04
        spin = to_ball(A, *spin)
        swing = to_lane(A, cross(spin, (d1, d2, d3)))
        L = to_lane(A, (I1 * spin[0], I2 * spin[1], I3 * spin[2]))
        self.rolls = False
        self.start([x, 0.0, vx + swing[0], vy + swing[1], *L, w, qx, qy, qz])
        while not self.step():
            pass

    def start(self, v):
        self.solver = DOP853(roll if self.rolls else slide, self.u, v, pins, first_step=min(self.h, 0.999 * (pins - self.u)), rtol=1e-13, atol=self.atol)
        if self.rolls:
            self.over = excess(self.u, v)

    def step(self):
        solver = self.solver
        self.u = solver.t
        cap = math.inf
        if not self.rolls:
            v = solver.y.tolist()
            k = slide_motion(v)
            if k.s < 12 * solver.h_abs / k.vy:
                mu = friction(self.u)
                ex, ey = k.sx / k.s, k.sy / k.s
                k.push(ex, ey, mu)
                rx, ry = k.slip_rate()
                rate = -(rx * ex + ry * ey)
                if k.s < 1e-12 or (rate > 0 and k.s < min(self.slip_end, 5 * self.slip_end * rate)):
                    rest = min(k.s / abs(rate), 5 * self.slip_end) * k.vy
                    self.h = max(self.h, solver.h_abs)
                    v = (solver.y + rest * solver.f).tolist()
                    self.u += rest
                    self.stick(v)
                    return False
                cap = 2.8 * k.s / (mu * k.N * compliance)
                if rate > 0:
                    cap = min(cap, 0.9 * k.s / rate)
                cap *= k.vy
        stop = c["y1"] if self.u < c["y1"] - 1e-9 else c["y2"] if self.u < c["y2"] - 1e-9 else pins
        solver.t_bound, solver.status, solver.max_step = stop, "running", cap
        wanted = solver.h_abs
        solver.step()
        if solver.status == "failed":
            raise RuntimeError("the step has become too small")
        if cap < wanted:
            solver.h_abs = max(wanted, solver.h_abs)
        if abs(solver.y[0]) > c["halfWidth"]:
            raise RuntimeError("gutter")
        if ending(solver.t, solver.y) >= 0:
            at, v = solver.t, solver.y
            if abs(v[0]) <= touch:
                dense = solver.dense_output()
                at = brentq(lambda t: ending(t, dense(t)), solver.t_old, solver.t, xtol=1e-12)
                v = dense(at)
            self.x, self.time = v[0], v[1]
            return True
        if self.rolls:
            before, self.over = self.over, excess(solver.t, solver.y)
            if max(before, self.over) > -0.5 * friction(solver.t) * m * g:
                dense = solver.dense_output()
                found = self.passes(lambda t: excess(t, dense(t)), solver.t_old, solver.t)
                if found:
                    self.u, self.h = found, solver.h_abs
                    self.slip_again(dense(found), False)
        return False

    @staticmethod
    def passes(over, start, end):
        """Where in a step of rolling the limit of grip is first passed, by quarters; where the demand only comes near it, the top of the parabola through three of them is tried as well."""
        at = [start + i / 4 * (end - start) for i in range(5)]
        f = [over(start)]
        if f[0] > 0:
            return start
        for i in range(1, 5):
            f.append(over(at[i]))
            if f[i] > 0:
                return brentq(over, at[i - 1], at[i], xtol=1e-12)
            if i > 1 and f[i - 2] < f[i - 1] >= f[i] and f[i - 1] > -0.05 * friction(start) * m * g:
                top = at[i - 1] - (f[i] - f[i - 2]) / (2 * (f[i] - 2 * f[i - 1] + f[i - 2])) * (at[1] - at[0])
                if over(top) > 0:
                    return brentq(over, at[i - 2], top, xtol=1e-12)
        return None

    def stick(self, v):
        k = slide_motion(v)
        A, spin = k.A, k.spin
        J, sigma = contact_inertia(A)
        swing = dot(A[2], cross(spin, (d1, d2, d3)))
        impulse = cross(sigma, to_ball(A, v[2], v[3], swing))
        K = to_lane(A, (I1 * spin[0] + m * impulse[0], I2 * spin[1] + m * impulse[1], I3 * spin[2] + m * impulse[2]))
        self.rolls = True
        v[4:7] = K
        if excess(self.u, v) > 0:
            self.slip_again(v, True)
        else:
            self.start(v)

    def slip_again(self, v, jump):
        moment = self.slip_start * (1e-3 if jump else 1)
        length = moment * roll_motion(list(v))[5]
        solver = DOP853(roll, self.u, v, self.u + length, first_step=0.999 * length, rtol=1e-13, atol=self.atol)
        while solver.status == "running":
            solver.step()
        self.u, v = solver.t, solver.y.tolist()
        A, J, sigma, spin, vx, vy = roll_motion(v)
        f = held(A, J, sigma, spin, vx, vy)
        mu = friction(self.u)
        k = Sliding(A, vx, vy, spin)

        def across(angle):
            k.push(math.cos(angle), math.sin(angle), mu)
            rx, ry = k.slip_rate()
            return rx * math.sin(angle) - ry * math.cos(angle)

        angle = math.atan2(-f[1], -f[0])
        for _ in range(8):
            now = across(angle)
            change = -now / ((across(angle + 1e-5) - now) / 1e-5)
            angle += min(max(change, -0.3), 0.3)
            if abs(change) < 1e-9:
                break
        across(angle)
        given = moment * (1 if jump else 0.5)
        fx, fy, fz = -mu * k.N * math.cos(angle) - f[0], -mu * k.N * math.sin(angle) - f[1], k.N - f[2]
        turn = cross(sigma, to_ball(A, given * fx, given * fy, given * fz))
        swing = to_lane(A, cross(spin, (d1, d2, d3)))
        v[2:4] = vx + swing[0] + given * fx / m, vy + swing[1] + given * fy / m
        v[4:7] = to_lane(A, (I1 * spin[0] - turn[0], I2 * spin[1] - turn[1], I3 * spin[2] - turn[2]))
        self.rolls = False
        self.h = min(self.h, 1e-2)
        self.start(v)


def greatest(which, tolerance):
    x = end = 0.0
    for release in which:
        try:
            shot = Shot(release, tolerance)
        except (RuntimeError, ValueError):
            return math.inf, math.inf
        x, end = max(x, abs(shot.x - release[11])), max(end, abs(shot.time - release[12]))
    return x, end


def micros(which, tolerance, rounds):
    total = 0.0
    for release in which:
        least = math.inf
        for _ in range(rounds):
            began = time.perf_counter()
            Shot(release, tolerance)
            least = min(least, time.perf_counter() - began)
        total += least
    return 1e6 * total / len(which)


# It finds its relative tolerance too fine and raises it to what rounding allows, which is what is wanted.
warnings.simplefilter("ignore")
few = releases[::16]
x, end = greatest(few, 1e-10)
print(f"check;SciPy DOP853, slow variables, by distance, every 16th release at 1E-10;{x:.1E};{end:.1E}", flush=True)
factor = 10 ** 0.2


def finer(which, tolerance, mark):
    """The first tolerance from here on at which the greatest error is below the mark."""
    while (error := greatest(which, tolerance))[0] > mark:
        tolerance /= factor
        if tolerance < 1e-13:
            raise RuntimeError(f"no tolerance leads to errors below {mark}")
    return tolerance, error


for mark in (1e-4, 1e-6):
    # Sought on every 16th release, then confirmed, or made finer, on all 512.
    tolerance, _ = finer(few, mark, mark)
    while tolerance < 1e-1 and greatest(few, tolerance * factor)[0] <= mark:
        tolerance *= factor
    tolerance, error = finer(releases, tolerance, mark)
    print(f"SciPy DOP853, slow;{mark:.0E};{tolerance:.2E};{error[0]:.2E};{error[1]:.2E};{micros(few, tolerance, 5):.1f}", flush=True)
