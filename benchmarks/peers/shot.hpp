// One shot by any of odeint's controlled steppers: phases, events, steps.
#pragma once

#include <boost/numeric/odeint.hpp>
#include <limits>
#include <stdexcept>
#include <type_traits>

#include "ball.hpp"

namespace ode = boost::numeric::odeint;

// x; y, or with distance as the independent variable the time; velocity; spin; quaternion.
constexpr std::size_t Size = 11;
using State = std::array<double, Size>;

// Largest weighted error of a component: odeint's own checker knows one tolerance for metres, radians and turns.
struct Weighted
{
    using algebra_type = ode::array_algebra;
    using operations_type = ode::default_operations;
    State weight{};

    template <class Algebra, class In, class Deriv, class Err, class Time>
    double error(Algebra&, const In&, const Deriv&, Err& e, Time) const
    {
        double worst = 0;
        for (std::size_t i = 0; i < Size; ++i)
        {
            worst = std::max(worst, std::abs(e[i]) * weight[i]);
        }
        // Not a number counts as large.
        return worst == worst ? worst : 1e10;
    }
};

using Dopri5 = ode::runge_kutta_dopri5<State, double, State, double, ode::array_algebra>;
using CashKarp54 = ode::runge_kutta_cash_karp54<State, double, State, double, ode::array_algebra>;
using Fehlberg78 = ode::runge_kutta_fehlberg78<State, double, State, double, ode::array_algebra>;

// Slow: velocity of the centre of mass and angular momentum in the lane's frame, about the contact point in rolling; else the textbook's velocity of the centre and spin in the body.
// ByDistance: the way down-lane is the independent variable, and steps end at the kinks of the friction and at the pins.
template <class Stepper, bool Slow, bool ByDistance>
class Shot
{
public:
    Shot(const Ball& ball, double tolerance)
        : ball(ball), tolerance(tolerance), smallest(std::min({ball.moments.x, ball.moments.y, ball.moments.z})),
          slipEnd(std::clamp(10 * tolerance, 1e-12, 1e-4)), slipStart(std::clamp(6e-4 * std::cbrt(tolerance / 1e-6), 2e-6, 2e-3)),
          compliance(1 / ball.mass + ball.radius * ball.radius / smallest), controlled(weights())
    {
    }

    int steps = 0, evaluations = 0;

    struct End
    {
        double x, time;
    };

    End run(double x, double y0, double vx, double vy, const double (&q)[4], V3 spinLane)
    {
        u = ByDistance ? y0 : 0;
        y[0] = x;
        y[1] = ByDistance ? 0 : y0;
        std::copy(q, q + 4, y.begin() + 7);
        const Axes axes = axesOf(y);
        rolls = false;
        put({vx, vy, axes.toBall(spinLane)}, axes);
        h = 5e-3 * (ByDistance ? vy : 1);
        enter();
        while (!step())
        {
        }
        return {y[0], ByDistance ? y[1] : u};
    }

private:
    using Controlled = ode::controlled_runge_kutta<Stepper, Weighted>;
    static constexpr bool Fsal = std::is_same_v<Stepper, Dopri5>;

    // What an error of each component would do to the path.
    Weighted weights() const
    {
        Weighted checker;
        const double one = 1 / tolerance;
        checker.weight.fill(one);
        for (int i = 4; i < 7; ++i) checker.weight[i] = one * (Slow ? ball.radius / smallest : ball.radius);
        for (int i = 7; i < 11; ++i) checker.weight[i] = one * 2 * ball.radius;
        if (ByDistance) checker.weight[1] = one * 8;
        return checker;
    }

    static Axes axesOf(const State& v) { return Axes(v[7], v[8], v[9], v[10]); }
    static double down(const State& v, double at) { return ByDistance ? at : v[1]; }

    struct System
    {
        Shot* shot;
        void operator()(const State& v, State& rates, double at) const
        {
            ++shot->evaluations;
            if (shot->rolls) shot->roll(v, rates); else shot->slide(v, rates, at);
        }
    };

    // The motion that a state stands for.
    Motion motion(const State& v, const Axes& axes) const
    {
        const V3 a{v[4], v[5], v[6]};
        if (rolls)
        {
            return rollingMotion(ball, axes, Slow ? ContactInertia(ball, axes).solve(axes.toBall(a)) : a);
        }
        if (!Slow)
        {
            return {v[2], v[3], a};
        }
        const V3 spin = scaled(ball.inverse, axes.toBall(a)), swing = cross(spin, ball.d);
        return {v[2] - dot(axes.right, swing), v[3] - dot(axes.down, swing), spin};
    }

    // Puts a motion into the variables of the present phase.
    void put(const Motion& m, const Axes& axes)
    {
        V3 a = m.spin;
        y[2] = m.vx;
        y[3] = m.vy;
        if (Slow)
        {
            const V3 swing = cross(m.spin, ball.d);
            y[2] += dot(axes.right, swing);
            y[3] += dot(axes.down, swing);
            a = axes.toLane(rolls ? ContactInertia(ball, axes).times(m.spin) : scaled(ball.moments, m.spin));
        }
        y[4] = a.x;
        y[5] = a.y;
        y[6] = a.z;
    }

    void finish(const State& v, State& r, const Motion& m) const
    {
        const double w = v[7], x = v[8], yy = v[9], z = v[10];
        const V3 p = m.spin;
        r[0] = m.vx;
        r[1] = ByDistance ? 1 : m.vy;
        r[7] = -0.5 * (x * p.x + yy * p.y + z * p.z);
        r[8] = 0.5 * (w * p.x + yy * p.z - z * p.y);
        r[9] = 0.5 * (w * p.y + z * p.x - x * p.z);
        r[10] = 0.5 * (w * p.z + x * p.y - yy * p.x);
        if (ByDistance)
        {
            const double per = 1 / m.vy;
            for (double& each : r) each *= per;
        }
    }

    void slide(const State& v, State& r, double at)
    {
        const Axes axes = axesOf(v);
        Sliding c;
        c.look(ball, axes, motion(v, axes));
        const double per = c.s > 0 ? 1 / c.s : 0;
        c.push(ball, axes, c.sx * per, c.sy * per, ball.friction(down(v, at)));
        slip = c.s;
        vy = c.at.vy;
        normal = c.N;
        V3 a = c.spinRate;
        if (Slow)
        {
            r[2] = c.ax;
            r[3] = c.ay;
            a = axes.toLane(c.N * c.arm - c.air);
        }
        else
        {
            c.centre(ball, axes, r[2], r[3]);
        }
        r[4] = a.x;
        r[5] = a.y;
        r[6] = a.z;
        finish(v, r, c.at);
    }

    void roll(const State& v, State& r)
    {
        const Axes axes = axesOf(v);
        const ContactInertia J(ball, axes);
        const V3 a{v[4], v[5], v[6]};
        const Motion m = rollingMotion(ball, axes, Slow ? J.solve(axes.toBall(a)) : a);
        V3 rate;
        if (Slow)
        {
            // dK/dt = sigma x m g + R n x D - m v x v_G; in v x v_G only the swing counts.
            const double k = -ball.drag * std::sqrt(m.vx * m.vx + m.vy * m.vy) * ball.radius;
            const V3 swing = axes.toLane(cross(m.spin, ball.d)), weight = axes.toLane(cross(axes.up, ball.d));
            const V3 carried = cross({m.vx, m.vy, 0}, swing);
            rate = ball.mass * (ball.gravity * weight - carried) + V3{-k * m.vy, k * m.vx, 0};
        }
        else
        {
            rate = Rolling(ball, axes, J, m).spinRate;
        }
        vy = m.vy;
        r[2] = r[3] = 0;
        r[4] = rate.x;
        r[5] = rate.y;
        r[6] = rate.z;
        finish(v, r, m);
    }

    // What rolling asks beyond the limit of grip, N.
    double excess(const State& v, double at) const
    {
        const Axes axes = axesOf(v);
        const ContactInertia J(ball, axes);
        const V3 a{v[4], v[5], v[6]};
        const Rolling c(ball, axes, J, rollingMotion(ball, axes, Slow ? J.solve(axes.toBall(a)) : a));
        if (!(c.N > 0)) throw std::runtime_error("the ball leaves the lane");
        return std::hypot(c.fx, c.fy) - ball.friction(down(v, at)) * c.N;
    }

    double ending(const State& v, double at) const
    {
        const double along = down(v, at) - ball.pinsAt;
        return std::max(ball.touch - std::sqrt(v[0] * v[0] + along * along), along);
    }

    void enter()
    {
        System{this}(y, k, u);
        if (rolls) over = excess(y, u);
    }

    State restep(double length)
    {
        State out;
        if constexpr (Fsal)
        {
            State last;
            plain.do_step(System{this}, y, k, u, out, last, length);
        }
        else
        {
            plain.do_step(System{this}, y, k, u, out, length);
        }
        return out;
    }

    // The state between the ends of a step, by Hermite's cubic.
    State between(const State& next, const State& last, double length, double t) const
    {
        const double a = (1 + 2 * t) * (1 - t) * (1 - t), b = t * t * (3 - 2 * t), c = t * (1 - t) * (1 - t) * length, d = t * t * (t - 1) * length;
        State v;
        for (std::size_t i = 0; i < Size; ++i) v[i] = a * y[i] + b * next[i] + c * k[i] + d * last[i];
        return v;
    }

    // Where in a step of rolling the limit of grip is first passed, by quarters; where the demand only comes near it, the top of the parabola through three of them is tried as well.
    bool passes(const State& next, const State& last, double length, double before, double after, double& low, double& high)
    {
        double f[5] = {before};
        const double close = -0.05 * ball.friction(down(y, u)) * ball.mass * ball.gravity;
        for (int i = 1; i <= 4; ++i)
        {
            f[i] = i < 4 ? excess(between(next, last, length, i / 4.0), u + i / 4.0 * length) : after;
            low = (i - 1) / 4.0;
            high = i / 4.0;
            if (f[i] > 0) return true;
            if (i > 1 && f[i - 1] > f[i - 2] && f[i - 1] >= f[i] && f[i - 1] > close)
            {
                const double top = (i - 1 - (f[i] - f[i - 2]) / (2 * (f[i] - 2 * f[i - 1] + f[i - 2]))) / 4;
                if (excess(restep(top * length), u + top * length) > 0)
                {
                    low = (i - 2) / 4.0;
                    high = top;
                    return true;
                }
            }
        }
        return false;
    }

    // Takes the step that ends where g passes zero: regula falsi (Illinois), every trial a step of its own.
    template <class G>
    bool land(double low, double high, G g, double close)
    {
        State v = restep(high);
        double gHigh = g(v, u + high), gLow = low > 0 ? g(restep(low), u + low) : g(y, u);
        if (gHigh < 0) return false;
        for (int i = 0, side = 0; i < 60 && high - low > close && gHigh > 0; ++i)
        {
            const double middle = low - gLow * (high - low) / (gHigh - gLow);
            const State trial = restep(middle);
            const double now = g(trial, u + middle);
            if (now >= 0)
            {
                const bool near = high - middle < close;
                high = middle;
                gHigh = now;
                v = trial;
                if (side == 1) gLow /= 2;
                side = 1;
                if (near) break;
            }
            else
            {
                const bool near = middle - low < close;
                low = middle;
                gLow = now;
                if (near)
                {
                    v = trial;
                    high = middle;
                    break;
                }
                if (side == -1) gHigh /= 2;
                side = -1;
            }
        }
        u += high;
        y = v;
        return true;
    }

    // Slip that ends: true if the drift over the rest was taken and the ball sticks; else the longest step that is safe.
    bool fades(double& cap)
    {
        const Axes axes = axesOf(y);
        const double mu = ball.friction(down(y, u));
        Sliding c;
        c.look(ball, axes, motion(y, axes));
        const double ex = c.sx / c.s, ey = c.sy / c.s;
        c.push(ball, axes, ex, ey, mu);
        double rx, ry;
        c.slipRate(ball, axes, rx, ry);
        const double rate = -(rx * ex + ry * ey);
        if (c.s < 1e-12 || (rate > 0 && c.s < std::min(slipEnd, 5 * slipEnd * rate)))
        {
            const double rest = std::min(c.s / std::abs(rate), 5 * slipEnd) * (ByDistance ? c.at.vy : 1);
            for (std::size_t i = 0; i < Size; ++i) y[i] += rest * k[i];
            u += rest;
            stick();
            return true;
        }
        cap = 2.8 * c.s / (mu * c.N * compliance);
        if (rate > 0) cap = std::min(cap, 0.9 * c.s / rate);
        if (ByDistance) cap *= c.at.vy;
        return false;
    }

    // What slip is left goes by an impulse at the contact, which leaves the momentum about it alone.
    void stick()
    {
        const Axes axes = axesOf(y);
        const Motion m = motion(y, axes);
        const ContactInertia J(ball, axes);
        const V3 vG = m.vx * axes.right + m.vy * axes.down + cross(m.spin, ball.d);
        const V3 K = scaled(ball.moments, m.spin) + ball.mass * cross(J.sigma, vG - dot(axes.up, vG) * axes.up + dot(axes.up, cross(m.spin, ball.d)) * axes.up);
        rolls = true;
        put(rollingMotion(ball, axes, J.solve(K)), axes);
        if (excess(y, u) > 0) slipAgain(true); else enter();
    }

    // Past the limit of grip by a moment; half, after a jump the whole, of the force that sliding adds meanwhile is given as an impulse, along the direction to which the contact's response is parallel.
    void slipAgain(bool jump)
    {
        const double moment = jump ? 1e-3 * slipStart : slipStart;
        enter();
        const double length = moment * (ByDistance ? vy : 1);
        y = restep(length);
        u += length;
        const Axes axes = axesOf(y);
        const ContactInertia J(ball, axes);
        const Motion m = motion(y, axes);
        const Rolling held(ball, axes, J, m);
        const double mu = ball.friction(down(y, u));
        Sliding c;
        c.look(ball, axes, m);
        // The part of the response across the direction.
        const auto across = [&](double angle)
        {
            double rx, ry;
            c.push(ball, axes, std::cos(angle), std::sin(angle), mu);
            c.slipRate(ball, axes, rx, ry);
            return rx * std::sin(angle) - ry * std::cos(angle);
        };
        double angle = std::atan2(-held.fy, -held.fx);
        for (int i = 0; i < 8; ++i)
        {
            const double now = across(angle), slope = (across(angle + 1e-5) - now) / 1e-5, change = -now / slope;
            angle += std::clamp(change, -0.3, 0.3);
            if (std::abs(change) < 1e-9) break;
        }
        across(angle);
        const double given = (jump ? 1 : 0.5) * moment, fx = -mu * c.N * std::cos(angle) - held.fx, fy = -mu * c.N * std::sin(angle) - held.fy, fz = c.N - held.N;
        const V3 impulse = given * (fx * axes.right + fy * axes.down + fz * axes.up);
        const V3 spin = m.spin + scaled(ball.inverse, cross(V3{0, 0, 0} - J.sigma, impulse));
        const V3 vG = cross(m.spin, ball.d) + (1 / ball.mass) * impulse, swing = cross(spin, ball.d);
        rolls = false;
        put({m.vx + dot(axes.right, vG - swing), m.vy + dot(axes.down, vG - swing), spin}, axes);
        enter();
    }

    // One step, or one change of phase; true at the end of the shot.
    bool step()
    {
        double length = h;
        if (ByDistance)
        {
            const double stop = u < ball.y1 - 1e-9 ? ball.y1 : u < ball.y2 - 1e-9 ? ball.y2 : ball.pinsAt;
            length = std::min(length, stop - u);
        }
        // The rate at which slip can fall is bounded by the friction: 12 m/s2 is beyond it.
        if (!rolls && slip < 12 * (ByDistance ? length / vy : length))
        {
            double cap = 0;
            if (fades(cap)) return false;
            length = std::min(length, cap);
        }
        if (++steps > 20000000) throw std::runtime_error("too many steps");
        const double seenSlip = slip, seenVy = vy;
        const bool capped = length < h;
        double at = u, proposed = length;
        State next, last;
        ode::controlled_step_result result;
        if constexpr (Fsal)
        {
            result = controlled.try_step(System{this}, y, k, at, next, last, proposed);
        }
        else
        {
            result = controlled.try_step(System{this}, y, k, at, next, proposed);
        }
        if (result == ode::fail)
        {
            h = proposed;
            slip = seenSlip;
            vy = seenVy;
            return false;
        }
        h = capped ? std::max(h, proposed) : proposed;
        if (std::abs(next[0]) > ball.halfWidth) throw std::runtime_error("gutter");
        if (ending(next, at) >= 0)
        {
            if (!(ByDistance && std::abs(next[0]) > ball.touch))
            {
                // A ten-thousandth of the tolerance down-lane is far less across.
                if (land(0, length, [this](const State& v, double a) { return ending(v, a); }, 1e-2 * tolerance)) return true;
            }
            y = next;
            u = at;
            return true;
        }
        if constexpr (!Fsal) System{this}(next, last, at);
        if (!rolls)
        {
            if (!(normal > 0)) throw std::runtime_error("the ball leaves the lane");
        }
        else
        {
            const double before = over, after = excess(next, at);
            if (after > 0 || std::max(before, after) > -0.5 * ball.friction(down(next, at)) * ball.mass * ball.gravity)
            {
                double low, high;
                if (passes(next, last, length, before, after, low, high)
                    && land(low * length, high * length, [this](const State& v, double a) { return excess(v, a); }, 1e-5 * slipStart))
                {
                    slipAgain(false);
                    return false;
                }
            }
            over = after;
        }
        y = next;
        k = last;
        u = at;
        return false;
    }

    const Ball& ball;
    const double tolerance, smallest, slipEnd, slipStart, compliance;
    Controlled controlled;
    Stepper plain;
    bool rolls = false;
    State y{}, k{};
    double u = 0, h = 0, slip = 0, vy = 0, normal = 0, over = 0;
};
