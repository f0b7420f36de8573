// The equations of a shot, (M1) to (M7) of src/BallSim/Motion/README.md, for a general solver: in the ball's principal axes, where the inertia is three numbers.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

struct V3
{
    double x, y, z;
};

inline V3 operator+(V3 a, V3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline V3 operator-(V3 a, V3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline V3 operator*(double s, V3 a) { return {s * a.x, s * a.y, s * a.z}; }
inline double dot(V3 a, V3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline V3 cross(V3 a, V3 b) { return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }
inline V3 scaled(V3 by, V3 a) { return {by.x * a.x, by.y * a.y, by.z * a.z}; }

struct Ball
{
    double mass, radius, gravity, drag, halfWidth, pinsAt, touch, mu1, mu2, y1, y2;
    V3 moments, inverse, d;

    double friction(double y) const
    {
        const double t = std::clamp((y - y1) / (y2 - y1), 0.0, 1.0);
        return mu1 + (mu2 - mu1) * t * t * (3 - 2 * t);
    }
};

// The lane's axes seen from the ball: the rows of the matrix from ball to lane. The quaternion may have any length.
struct Axes
{
    V3 right, down, up;

    Axes(double w, double x, double y, double z)
    {
        const double s = 2 / (w * w + x * x + y * y + z * z);
        right = {1 - s * (y * y + z * z), s * (x * y - w * z), s * (x * z + w * y)};
        down = {s * (x * y + w * z), 1 - s * (x * x + z * z), s * (y * z - w * x)};
        up = {s * (x * z - w * y), s * (y * z + w * x), 1 - s * (x * x + y * y)};
    }

    V3 toLane(V3 b) const { return {dot(right, b), dot(down, b), dot(up, b)}; }
    V3 toBall(V3 l) const { return l.x * right + l.y * down + l.z * up; }
};

// A state of motion, free of the variables that a formulation integrates: centre's velocity (lane), angular velocity (ball).
struct Motion
{
    double vx, vy;
    V3 spin;
};

struct Sliding
{
    Motion at;
    double sx, sy, s, dx, dy, N, ax, ay;
    V3 centripetal, free, perN, arm, air, spinRate;

    // What does not depend on the direction of friction.
    void look(const Ball& ball, const Axes& axes, const Motion& m)
    {
        at = m;
        sx = m.vx - ball.radius * dot(axes.down, m.spin);
        sy = m.vy + ball.radius * dot(axes.right, m.spin);
        s = std::sqrt(sx * sx + sy * sy);
        const double k = -ball.drag * std::sqrt(m.vx * m.vx + m.vy * m.vy);
        dx = k * m.vx;
        dy = k * m.vy;
        air = cross(ball.d, dx * axes.right + dy * axes.down);
        centripetal = cross(m.spin, cross(m.spin, ball.d));
        free = scaled(ball.inverse, V3{0, 0, 0} - cross(m.spin, scaled(ball.moments, m.spin)) - air);
    }

    // Friction mu against the unit vector (ex, ey).
    void push(const Ball& ball, const Axes& axes, double ex, double ey, double mu)
    {
        const V3 rho = -ball.radius * axes.up - ball.d;
        arm = cross(rho, axes.up - mu * (ex * axes.right + ey * axes.down));
        perN = scaled(ball.inverse, arm);
        N = ball.mass * (ball.gravity + dot(axes.up, cross(free, ball.d) + centripetal)) / (1 - ball.mass * dot(axes.up, cross(perN, ball.d)));
        spinRate = free + N * perN;
        ax = (dx - mu * N * ex) / ball.mass;
        ay = (dy - mu * N * ey) / ball.mass;
    }

    // Acceleration of Bo along and across.
    void centre(const Ball& ball, const Axes& axes, double& cx, double& cy) const
    {
        const V3 swing = cross(spinRate, ball.d) + centripetal;
        cx = ax - dot(axes.right, swing);
        cy = ay - dot(axes.down, swing);
    }

    void slipRate(const Ball& ball, const Axes& axes, double& rx, double& ry) const
    {
        centre(ball, axes, rx, ry);
        rx -= ball.radius * dot(axes.down, spinRate);
        ry += ball.radius * dot(axes.right, spinRate);
    }
};

// Inertia about the contact point, ball's axes.
struct ContactInertia
{
    double xx, yy, zz, xy, xz, yz;
    V3 sigma;

    ContactInertia(const Ball& ball, const Axes& axes)
    {
        sigma = ball.radius * axes.up + ball.d;
        const double m = ball.mass;
        xx = ball.moments.x + m * (sigma.y * sigma.y + sigma.z * sigma.z);
        yy = ball.moments.y + m * (sigma.x * sigma.x + sigma.z * sigma.z);
        zz = ball.moments.z + m * (sigma.x * sigma.x + sigma.y * sigma.y);
        xy = -m * sigma.x * sigma.y;
        xz = -m * sigma.x * sigma.z;
        yz = -m * sigma.y * sigma.z;
    }

    V3 times(V3 a) const { return {xx * a.x + xy * a.y + xz * a.z, xy * a.x + yy * a.y + yz * a.z, xz * a.x + yz * a.y + zz * a.z}; }

    V3 solve(V3 b) const
    {
        const double cxx = yy * zz - yz * yz, cxy = xz * yz - xy * zz, cxz = xy * yz - xz * yy;
        const double per = 1 / (xx * cxx + xy * cxy + xz * cxz);
        const double cyy = xx * zz - xz * xz, czz = xx * yy - xy * xy, cyz = xy * xz - xx * yz;
        return per * V3{cxx * b.x + cxy * b.y + cxz * b.z, cxy * b.x + cyy * b.y + cyz * b.z, cxz * b.x + cyz * b.y + czz * b.z};
    }
};

inline Motion rollingMotion(const Ball& ball, const Axes& axes, V3 spin)
{
    return {ball.radius * dot(axes.down, spin), -ball.radius * dot(axes.right, spin), spin};
}

struct Rolling
{
    double dx, dy, fx, fy, N;
    V3 spinRate;

    Rolling(const Ball& ball, const Axes& axes, const ContactInertia& J, const Motion& m)
    {
        const double k = -ball.drag * std::sqrt(m.vx * m.vx + m.vy * m.vy);
        dx = k * m.vx;
        dy = k * m.vy;
        const V3 drag = dx * axes.right + dy * axes.down;
        const V3 held = cross(m.spin, cross(m.spin, ball.d)) + ball.gravity * axes.up;
        spinRate = J.solve(ball.radius * cross(axes.up, drag) - cross(m.spin, scaled(ball.moments, m.spin)) - ball.mass * cross(J.sigma, held));
        const V3 f = ball.mass * (cross(spinRate, J.sigma) + held) - drag;
        fx = dot(axes.right, f);
        fy = dot(axes.down, f);
        N = dot(axes.up, f);
    }
};
